import type { Decimal, Key, Quantity, Side, UnitCode } from '../../model/primitive.ts';
import type { StatementKind } from '../../model/statement.ts';

/**
 * `new`: denied before and present now; `gone`: the reverse. `changed` and `unchanged` of a measure
 * rest on figures taken the same way. `same`: stated alike in both, without a measurement, so no
 * claim that it is unchanged. `not-comparable`: anything less, with the reason.
 */
export type Change = 'new' | 'gone' | 'changed' | 'unchanged' | 'same' | 'not-comparable';

/** What became of one thing between two exams. */
export interface Comparison {
  /** Made from what the statement is about, never from its key: the same in every exam. */
  readonly identity: string;
  readonly kind: StatementKind;
  /** Code of the finding, measure, test and so on; of the region for a state. */
  readonly code: string;
  /** Code of the region, where it stands at one. */
  readonly region?: string;
  readonly side?: Side;
  /** Code, for a sensation. */
  readonly modality?: string;
  /** Key of the lesion that is followed over exams. */
  readonly tracking?: Key;
  readonly change: Change;
  /** Key of the statement in this exam, and in the one before. */
  readonly now?: Key;
  readonly before?: Key;
  /** Why no more is claimed, for `not-comparable` and `same`. */
  readonly reason?: string;
  /** Codes before and now, for what is stated by a code. */
  readonly values?: { readonly before: string; readonly now: string };
  /** For a measurement taken in both exams. */
  readonly figures?: FigureChange;
  /** Calendar days between the two; left out where a date is not exact to the day. */
  readonly days?: number;
}

/** Change of a figure. Decimals are exact; percent is rounded to two places. */
export interface FigureChange {
  readonly before: { readonly value: Decimal; readonly unit: UnitCode };
  readonly now: { readonly value: Decimal; readonly unit: UnitCode };
  readonly delta: Decimal;
  readonly unit: UnitCode;
  /** Of the value before; left out where that is zero or less. */
  readonly percent?: Decimal;
  /** Smallest step that the coarser of the two instruments shows, where it is stated: a difference is uncertain by it. */
  readonly resolution?: Quantity;
  /** The difference is smaller than what the instrument can tell, so it is not a change. */
  readonly withinResolution?: true;
}
