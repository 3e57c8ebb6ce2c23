import { append } from '../../append.ts';
import type { Issue } from '../../issue.ts';
import { issue } from '../issue.ts';
import type { CsvSource } from '../mapping/source.ts';
import type { RawUnit, Splitter } from '../record/record.ts';
import { columnNames, fittingCells, readCells, renamedColumns } from './cells.ts';
import { filledCells, fillerOf } from './fill-down.ts';
import { type KeyedRow, rowGrouper } from './row-grouper.ts';
import { type Row, rowBody, rowSplitter } from './row-splitter.ts';
import { rowUnit } from './row-unit.ts';

/**
 * Longest row of headings, in characters: some thousand columns. Quarantine repeats it with every row,
 * so that without a bound a small table could become a very large file.
 */
const LONGEST_HEADING = 65_536;

/** Cuts delimited text into units of one exam. Rows without any content are passed over. */
export function csvSplitter(source: CsvSource, decode: (bytes: string) => string): Splitter {
  const delimiter = source.delimiter ?? ',';
  const rows = rowSplitter(delimiter);
  const groups = source.groupBy === undefined ? undefined : rowGrouper(source.rows ?? 'adjacent');
  const namesOf = (headings: readonly string[]): readonly string[] =>
    renamedColumns(columnNames(headings), source);
  let header = source.header === undefined ? undefined : namesOf(source.header);
  let started = false;

  const withoutMark = (piece: string): string => {
    if (started || piece === '') return piece;
    started = true;
    return piece.replace(/^\uFEFF/, '');
  };
  const headings: string[][] = [];
  const fill = source.fillDown && fillerOf(source.fillDown, delimiter, decode);

  /** Takes the rows up to the headings; units for what can not be read of them. */
  const takeHeadings = (rows: Row[]): RawUnit[] => {
    while (header === undefined) {
      const [first] = rows.splice(0, 1).map(bounded);
      if (first === undefined) break;
      if (first.line <= (source.skip ?? 0)) continue;
      const hint = headings.length === 0 ? /^sep=(.)$/.exec(rowBody(first.text).trim()) : null;
      if (hint?.[1] === delimiter) continue;
      if (hint !== null) return [rowUnit([first], [], [otherDelimiter(first.line)])];
      const cells = first.fault === undefined ? readCells([rowBody(first.text)], delimiter)[0] : [];
      headings.push((cells ?? []).map(decode));
      if (headings.length < (source.headingRows ?? 1)) continue;
      header = namesOf(joinedHeadings(headings));
      if (header.length === 0) return [rowUnit([first], header)];
    }
    return [];
  };
  const unitsOf = (found: readonly Row[]): RawUnit[] => {
    const rows = found.filter((row) => !isEmpty(row.text, delimiter));
    const units = takeHeadings(rows);
    if (header === undefined) return units;
    const names = header;
    const data = fill === undefined ? rows : fill(rows, names);
    if (groups === undefined) {
      append(
        units,
        data.map((row) => rowUnit([row], names)),
      );
    } else append(units, groups.push(withKeys(data, names), names));
    return units;
  };
  const withKeys = (data: readonly Row[], names: readonly string[]): KeyedRow[] => {
    const columns = (source.groupBy ?? []).map((name) => names.indexOf(name));
    const readable = data.filter((row) => row.fault === undefined);
    const cells = readCells(
      readable.map((row) => rowBody(row.text)),
      delimiter,
    );
    const cellsOf = new Map(
      readable.map((row, at) => [
        row,
        fittingCells(cells[at], names.length, source.trailingDelimiter ?? false),
      ]),
    );
    return data.map((row) => ({ row, key: keyOf(filledCells(cellsOf.get(row), row), columns) }));
  };
  return {
    push: (piece) => unitsOf(rows.push(withoutMark(piece))),
    end: () => [...unitsOf(rows.end()), ...(groups?.end(header ?? []) ?? [])],
  };
}

/** Two rows of headings as one: a blank cell of the upper row is the one to its left. */
function joinedHeadings([upper = [], lower]: readonly (readonly string[])[]): readonly string[] {
  if (lower === undefined) return upper;
  let above = '';
  return Array.from({ length: Math.max(upper.length, lower.length) }, (_, at) => {
    above = upper[at]?.trim() || above;
    return `${above} ${lower[at]?.trim() ?? ''}`.trim();
  });
}

function otherDelimiter(line: number): Issue {
  return issue('invalid-value', [], { reason: 'delimiter' }, { source: { line } });
}

function bounded(heading: Row): Row {
  return heading.text.length > LONGEST_HEADING ? { ...heading, fault: 'too-large' } : heading;
}

/** Undefined for a row that cannot be read or that names no exam. */
function keyOf(
  cells: readonly string[] | undefined,
  columns: readonly number[],
): string | undefined {
  if (cells === undefined) return undefined;
  const parts = columns.map((column) => cells[column]?.trim() ?? '');
  return parts.every((part) => part === '') ? undefined : JSON.stringify(parts);
}

function isEmpty(text: string, delimiter: string): boolean {
  for (const mark of text) {
    if (mark !== delimiter && mark.trim() !== '') return false;
  }
  return true;
}
