/**
 * A table, with what each column is. A target is written `kind/code@region side unit modality`; `open`
 * is a column that nobody can place from its name: to place it is wrong. `words` is what each word of
 * a column means for sure; any other meaning that is proposed is wrong, and so is a unit that no name
 * or value states.
 */
export interface Table {
  readonly name: string;
  readonly text: string;
  readonly columns: { readonly [name: string]: string };
  /** Codes of the items of a long table. */
  readonly items?: { readonly [code: string]: string };
  readonly words?: { readonly [name: string]: { readonly [word: string]: string } };
  /** The form of the dates, or `open` where day and month cannot be told apart. */
  readonly dates?: string;
}

/** Lines of an export. */
export const rows = (...lines: readonly string[]): string => `${lines.join('\n')}\n`;
