import type { Issue, SourcePosition } from '../../issues/issue.ts';
import type { CsvSource } from '../mapping/source.ts';
import { type Cells, fittingCells, readCells } from './cells.ts';
import { type RowSplitter, rowSplitter } from './row-splitter.ts';

/** How a syntax writes a table: what a row is, and where its cells are. */
export interface TableForm {
  /** A fresh splitter for one text, or for the rows of one unit. */
  readonly rows: () => RowSplitter;
  /** Cells of rows without their line endings, one for one. */
  readonly cells: (bodies: readonly string[]) => Cells[];
  /** The cells of a row that goes with this many columns; undefined where they may have shifted. */
  readonly fit: (cells: Cells, columns: number) => readonly string[] | undefined;
  /** Whether a row holds nothing, so that it is passed over. */
  readonly isEmpty: (text: string) => boolean;
  /** What stands between cells, where a first line such as `sep=;` can name another. */
  readonly delimiter?: string;
  /** The columns where no heading names them. */
  readonly columns?: readonly string[];
  /** What is wrong with a row whose cells are undefined, where the syntax can say more. */
  readonly fault?: (body: string, line: number) => Issue | undefined;
  /** Name of a cell behind the last column. Default: `#` and the number of its column. */
  readonly furtherName?: (column: number) => string;
  /** Cells are found by their place, so that a row is decoded before it is cut. */
  readonly byPlace?: true;
  /** Where a cell stands. Default: its line and the number of its column. */
  readonly place?: (unit: SourcePosition, line: number, column?: number) => SourcePosition;
}

/** Text with a delimiter between cells. */
export function delimitedForm({ delimiter = ',', trailingDelimiter }: CsvSource): TableForm {
  return {
    rows: () => rowSplitter(delimiter),
    cells: (bodies) => readCells(bodies, delimiter),
    fit: (cells, columns) => fittingCells(cells, columns, trailingDelimiter ?? false),
    isEmpty: (text) => isEmpty(text, delimiter),
    delimiter,
  };
}

/** Whether nothing but delimiters and spaces stands in a row. */
export function isEmpty(text: string, delimiter: string): boolean {
  for (const mark of text) {
    if (mark !== delimiter && mark.trim() !== '') return false;
  }
  return true;
}
