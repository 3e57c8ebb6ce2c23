import type { TableName } from '../../terminology/built-in.ts';
import { builtInCatalogue } from '../../terminology/catalogue.ts';
import { type ExportedCode, exportedCodes } from '../../terminology/exported-codes.ts';
import { kebab } from '../../terminology/named-table.ts';
import type { Mapping, Relation } from '../../terminology/types.ts';
import type { LanguageFile } from '../terminology/languages.ts';
import type { Row, Tables } from '../terminology/terminology-check.ts';

/** A concept as the package prints it: a row, a value in it or one of its sides. */
export interface PackageConcept extends ExportedCode {
  /** The row in its JSON file, with definition and source. */
  readonly source: Row;
  readonly definition: string | undefined;
  readonly designations: readonly { readonly language: string; readonly value: string }[];
  readonly maps: readonly Mapping[];
}

/** Every concept of a table, with what its JSON file and the languages say of it. */
export function packageConcepts(
  table: TableName,
  tables: Tables,
  languages: readonly LanguageFile[],
): PackageConcept[] {
  const rows = new Map(tables[kebab(table)]?.concepts.map((row) => [String(row.code), row]));
  return exportedCodes(builtInCatalogue, table).map((exported) => {
    const source = rows.get(exported.row) ?? {};
    const maps: readonly Mapping[] = builtInCatalogue[table].get(exported.row)?.maps ?? [];
    return {
      ...exported,
      source,
      definition: definitionOf(exported, source),
      designations: languages.flatMap((language) => designation(table, exported, language)),
      maps: mapsOf(exported, maps),
    };
  });
}

function definitionOf({ value, side }: ExportedCode, source: Row): string | undefined {
  const holder: Row = value === undefined ? source : { ...value };
  const { definition } = holder;
  return side === undefined && typeof definition === 'string' ? definition : undefined;
}

function designation(
  table: TableName,
  { code, row, side }: ExportedCode,
  language: LanguageFile,
): PackageConcept['designations'] {
  const words = language.displays[kebab(table)] ?? {};
  const word = words[side === undefined ? code : row];
  if (word === undefined) return [];
  const value = side === undefined ? word : `${word}, ${language.sides[side] ?? side}`;
  return [{ language: language.language, value }];
}

/** A region with its side is a special case of the region, so an equivalent code is a wider one for it. */
function mapsOf({ value, side }: ExportedCode, maps: readonly Mapping[]): readonly Mapping[] {
  if (value !== undefined) return value.maps ?? [];
  if (side === undefined) return maps;
  return maps.map((map) => ({ ...map, relation: sided(map.relation) }));
}

function sided(relation: Relation): Relation {
  return relation === 'equivalent' || relation === 'wider' ? 'wider' : 'relatedto';
}
