import type { FieldName } from './mapping.ts';

/**
 * What is done with the text of a field before anything is read from it. There are no others: no
 * expressions and no code. Each part stands in the text as it was, with its place, and the ledger
 * counts the field it is of; a text that an operation does not fit stays whole and is told.
 */
export type CellOperation = SplitSides | SplitList | Pick | LookUp;

/** "R 4 mm L 2 mm" as two fields. */
export interface SplitSides {
  readonly do: 'split-sides';
  readonly from: FieldName;
  /** Side words as they are written; case counts. */
  readonly words: SideWords;
  readonly into: SideParts;
}

export interface SideWords {
  /** @minItems 1 */
  readonly right: readonly string[];
  /** @minItems 1 */
  readonly left: readonly string[];
  readonly both?: readonly string[];
}

/** Names of the parts. */
export interface SideParts {
  readonly right: FieldName;
  readonly left: FieldName;
  readonly both?: FieldName;
}

/** "scar, naevus" as a field for each. */
export interface SplitList {
  readonly do: 'split-list';
  readonly from: FieldName;
  /**
   * Mark between the parts.
   * @minLength 1
   * @maxLength 5
   */
  readonly at: string;
  /** Name that each part has. */
  readonly into: FieldName;
}

/** "MRD1 4 mm, fissure 9 mm" as a field for each figure. */
export interface Pick {
  readonly do: 'pick';
  readonly from: FieldName;
  /**
   * Texts with a place holder for each part, `{name:number}`, `{name:word}` or `{name:text}`: of several
   * the first that fits the whole text.
   * @minItems 1
   */
  readonly patterns: readonly string[];
}

/** A code of the export as the word that stands for it in a table. */
export interface LookUp {
  readonly do: 'look-up';
  readonly from: FieldName;
  readonly table: { readonly [text: string]: string };
  readonly into: FieldName;
}
