import type { Comparison } from '../checks/compare/comparison.ts';
import { subjectTables } from '../kinds/subject-tables.ts';
import type { TableName } from '../terminology/built-in.ts';
import { builtInCatalogue } from '../terminology/catalogue.ts';
import { sideText } from '../terminology/sides.ts';

/** What a comparison is about, in words: `Naevus (mole), Temple, right`. */
export function comparedName({ kind, code, region, side, modality }: Comparison): string {
  const name = displayOf(subjectTables[kind], code);
  const place = region === undefined || region === code ? '' : displayOf('regions', region);
  const way = modality === undefined ? '' : displayOf('modalities', modality);
  return [name, place, side === undefined ? '' : sideText[side], way].filter(Boolean).join(', ');
}

export function displayOf(table: TableName, code: string): string {
  return builtInCatalogue[table].get(code)?.display ?? code;
}
