import type { Code, Coding, DateTime, Key, Side, Text } from '../../model/primitive.ts';

export interface StatementBase {
  /** Unique in the exam. All ids of exported resources derive from it, so keep it when re-sending. */
  readonly key: Key;
  /** When this was done, where it differs from the time of the exam. */
  readonly at?: DateTime;
  /** Key of the examiner, where it is not the first of the exam. */
  readonly examiner?: Key;
  /**
   * Keys of the instruments used.
   * @minItems 1
   */
  readonly instruments?: readonly Key[];
  /** The examiner's words, verbatim; never parsed. */
  readonly note?: Text;
  /**
   * Codes of other systems for what is stated, as the caller gives them.
   * @minItems 1
   */
  readonly codings?: readonly Coding[];
  /**
   * Set when the statement was taken over from an earlier exam and not made anew. It keeps its own
   * time; `confirmed` says that the examiner looked again and stands by it.
   */
  readonly carried?: Carried;
}

export interface Carried {
  readonly exam: Key;
  readonly statement: Key;
  readonly at: DateTime;
  readonly confirmed: boolean;
}

/** Taken over from an earlier exam and not looked at again: not known today. */
export function isUnconfirmed({ carried }: Pick<StatementBase, 'carried'>): boolean {
  return carried?.confirmed === false;
}

/** Its own time; what was taken over and not looked at again keeps the time at which it was seen. */
export function seenAt({
  at,
  carried,
}: Pick<StatementBase, 'at' | 'carried'>): DateTime | undefined {
  return at ?? (carried?.confirmed === false ? carried.at : undefined);
}

export interface Sited extends StatementBase {
  /** Code of terminology/regions.json. */
  readonly region: Code;
  /** Required where the region is paired. */
  readonly side?: Side;
  /** Where within the region, in the examiner's words: "12 mm below the lateral canthus". */
  readonly place?: Text;
}

export interface Examined extends Sited {
  /**
   * Codes of terminology/methods.json.
   * @minItems 1
   */
  readonly methods?: readonly Code[];
}

/** A place below the region of a statement that the statement does not speak of. */
export interface ExceptedPlace {
  /** Code of terminology/regions.json. */
  readonly region: Code;
  /** Required where the region is paired. */
  readonly side?: Side;
}

export interface WithExceptions {
  /**
   * Of what is not there or normal in a group of regions: its members of which that is not said,
   * since they were not examined, only in part, are not there, or a statement of their own says
   * otherwise.
   * @minItems 1
   */
  readonly except?: readonly ExceptedPlace[];
}

/** Why something was not done, or only in part. */
export interface Reason {
  /** Code of terminology/reasons.json. */
  readonly code: Code;
  readonly text?: Text;
}

/**
 * @asType integer
 * @minimum 0
 * @maximum 100000
 */
export type Count = number;
