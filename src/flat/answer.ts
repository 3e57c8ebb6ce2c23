import type { Reason } from '../kinds/facets/base.ts';
import type { Polarity } from '../kinds/facets/meaning.ts';
import type { TableName } from '../terminology/built-in.ts';
import type { Catalogue } from '../terminology/catalogue.ts';
import type { FlatRow, FlatState } from './flat-row.ts';

/** What the columns of one row say of the answer. */
export type Answer = Partial<FlatRow> & { readonly state: FlatState };

/** What a result says: of a point or test that a usual one denies a deviation. */
export function resultState(polarity: Polarity | undefined): FlatState {
  if (polarity === 'states') return 'abnormal';
  if (polarity === 'denies') return 'normal';
  return polarity === 'open' ? 'undecided' : 'not-examined';
}

export function reasonColumns(reason: Reason | undefined): Partial<FlatRow> {
  return reason === undefined ? {} : { reason: reason.code, reason_text: reason.text ?? '' };
}

export function answerColumns(
  catalogue: Catalogue,
  table: TableName,
  code: string,
): Partial<FlatRow> {
  return { answer: code, answer_display: catalogue[table].get(code)?.display ?? '' };
}

/** Several values in one column. */
export function listed(values: readonly string[]): string {
  return values.join('; ');
}
