import { append } from '../../data/append.ts';
import type { CsvSource } from '../mapping/source.ts';
import type { RawUnit, Splitter } from '../record/record.ts';
import { fittingCells, readCells } from './cells.ts';
import { filledCells, fillerOf } from './fill-down.ts';
import { headingReader } from './headings.ts';
import { type KeyedRow, rowGrouper } from './row-grouper.ts';
import { type Row, rowBody, rowSplitter } from './row-splitter.ts';
import { rowUnit } from './row-unit.ts';

/** Cuts delimited text into units of one exam. Rows without any content are passed over. */
export function csvSplitter(source: CsvSource, decode: (bytes: string) => string): Splitter {
  const delimiter = source.delimiter ?? ',';
  const rows = rowSplitter(delimiter);
  const groups = source.groupBy === undefined ? undefined : rowGrouper(source.rows ?? 'adjacent');
  const headings = headingReader(source, delimiter, decode);
  const fill = source.fillDown && fillerOf(source.fillDown, delimiter, decode);
  let started = false;

  const withoutMark = (piece: string): string => {
    if (started || piece === '') return piece;
    started = true;
    return piece.replace(/^\uFEFF/, '');
  };
  const unitsOf = (found: readonly Row[]): RawUnit[] => {
    const rows = found.filter((row) => !isEmpty(row.text, delimiter));
    const units = headings.take(rows);
    const names = headings.names();
    if (names === undefined) return units;
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
    end: () => [...unitsOf(rows.end()), ...(groups?.end(headings.names() ?? []) ?? [])],
  };
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
