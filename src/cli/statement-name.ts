import type { Comparison } from '../checks/compare/comparison.ts';
import type { StatementKind } from '../model/statement.ts';
import type { TableName } from '../terminology/built-in.ts';
import { builtInCatalogue } from '../terminology/catalogue.ts';
import { sideText } from '../terminology/sides.ts';

/** Table in which the code stands by which a statement is known. */
const tables: Readonly<Record<StatementKind, TableName>> = {
  finding: 'findings',
  'region-state': 'regions',
  sensation: 'testPoints',
  'sensation-comparison': 'testPoints',
  movement: 'testPoints',
  'function-test': 'testPoints',
  measurement: 'measures',
  'scale-score': 'scales',
  symptom: 'symptoms',
  note: 'regions',
  image: 'regions',
};

/** What a comparison is about, in words: `Naevus (mole), Temple, right`. */
export function comparedName({ kind, code, region, side, modality }: Comparison): string {
  const name = displayOf(tables[kind], code);
  const place = region === undefined || region === code ? '' : displayOf('regions', region);
  const way = modality === undefined ? '' : displayOf('modalities', modality);
  return [name, place, side === undefined ? '' : sideText[side], way].filter(Boolean).join(', ');
}

export function displayOf(table: TableName, code: string): string {
  return builtInCatalogue[table].get(code)?.display ?? code;
}
