import { parse } from 'csv-parse/sync';
import type { CsvSource } from '../mapping/source.ts';

/** Cells of one row; undefined where its quoting is broken. */
export type Cells = readonly string[] | undefined;

/** Cells of many rows, one for one. Rows are given without their line endings. */
export function readCells(written: readonly string[], delimiter: string): Cells[] {
  const rows = written.map((row) => (row.includes('="') ? withoutFormulas(row, delimiter) : row));
  return parsedRows(rows, delimiter).map((cells) => cells && withTexts(cells));
}

/** The same, with cells such as ="00123" left as they are. */
export function parsedRows(rows: readonly string[], delimiter: string): Cells[] {
  const together = parseRows(rows.join('\n'), delimiter);
  if (together?.length === rows.length) return together;
  return rows.map((row) => {
    const alone = parseRows(row, delimiter);
    return alone?.length === 1 ? alone[0] : undefined;
  });
}

/**
 * The row with cells such as ="00123" as quoted ones: a spreadsheet writes a text so that it would else
 * read as a number. No other formula is touched, and none is evaluated.
 */
function withoutFormulas(row: string, delimiter: string): string {
  let result = '';
  let from = 0;
  let quoted = false;
  for (let at = 0; at < row.length; at += 1) {
    const begins = at === 0 || row[at - 1] === delimiter;
    if (!quoted && begins && row.startsWith('="', at)) {
      result += row.slice(from, at);
      from = at + 1;
    } else if (row[at] === '"') quoted = !quoted;
  }
  return result + row.slice(from);
}

/** The same cells where the spreadsheet has quoted them once more. */
function withTexts(cells: readonly string[]): readonly string[] {
  if (!cells.some((cell) => cell.startsWith('="'))) return cells;
  return cells.map((cell) => /^="([^"]*)"$/.exec(cell)?.[1] ?? cell);
}

function parseRows(text: string, delimiter: string): string[][] | undefined {
  if (text === '') return [];
  try {
    return parse(text, { delimiter, record_delimiter: '\n', relax_column_count: true });
  } catch {
    // csv-parse throws on quoting that RFC 4180 does not allow.
    return undefined;
  }
}

/**
 * Names for columns: the headings, trimmed. A heading that comes again gets `#2`, a blank one `#`
 * and its place, so that every column has a name of its own.
 */
export function columnNames(headings: readonly string[]): string[] {
  const seen = new Map<string, number>();
  return headings.map((heading, at) => {
    const name = heading.trim() || `#${at + 1}`;
    const times = (seen.get(name) ?? 0) + 1;
    seen.set(name, times);
    return times === 1 ? name : `${name}#${times}`;
  });
}

/** The names with those that a mapping knows under another name renamed. */
export function renamedColumns(
  names: readonly string[],
  { headings }: Pick<CsvSource, 'headings'>,
): readonly string[] {
  if (headings === undefined) return names;
  const meant = new Map(
    Object.entries(headings).flatMap(([name, others]) =>
      [name, ...others].map((heading) => [plainHeading(heading), name] as const),
    ),
  );
  const known = names.map((name) => meant.get(plainHeading(name)));
  return names.map((name, at) => {
    const other = known[at];
    const isOnly = other !== undefined && known.indexOf(other) === known.lastIndexOf(other);
    return isOnly ? other : name;
  });
}

function plainHeading(heading: string): string {
  return heading.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
}

/**
 * The cells of a row that fits its columns. Undefined for a row with a cell too few or too many: its
 * cells may have shifted, as they do where `4,5` stands without quotes. Only where the table is said
 * to have a delimiter at the end of each row, a blank cell behind the last column is let go.
 */
export function fittingCells(
  cells: Cells,
  columns: number,
  trailingDelimiter: boolean,
): readonly string[] | undefined {
  if (cells?.length === columns) return cells;
  const isTrailing = trailingDelimiter && cells?.length === columns + 1 && cells[columns] === '';
  return isTrailing ? cells.slice(0, columns) : undefined;
}
