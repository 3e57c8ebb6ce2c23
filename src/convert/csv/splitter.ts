import { append } from '../../data/append.ts';
import type { TableRows } from '../mapping/source.ts';
import type { RawUnit, Splitter } from '../record/record.ts';
import { filledCells, fillerOf } from './fill-down.ts';
import { headingReader } from './headings.ts';
import { type KeyedRow, rowGrouper } from './row-grouper.ts';
import { type Row, rowBody } from './row-splitter.ts';
import { rowUnit } from './row-unit.ts';
import type { TableForm } from './table-form.ts';

/** Cuts the text of a table into units of one exam. Rows without any content are passed over. */
export function tableSplitter(
  form: TableForm,
  source: TableRows,
  decode: (bytes: string) => string,
): Splitter {
  const rows = form.rows();
  const groups = source.groupBy === undefined ? undefined : rowGrouper(source.rows ?? 'adjacent');
  const headings = headingReader(form, source, decode);
  const fill = source.fillDown && fillerOf(form, source.fillDown, decode);
  let started = false;

  const bodyOf = (row: Row): string =>
    form.byPlace ? decode(rowBody(row.text)) : rowBody(row.text);

  const withoutMark = (piece: string): string => {
    if (started || piece === '') return piece;
    started = true;
    return piece.replace(/^\uFEFF/, '');
  };
  const unitsOf = (found: readonly Row[]): RawUnit[] => {
    const skipped = source.skip ?? 0;
    const rows = found.filter(({ line, text }) => line > skipped && !form.isEmpty(text));
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
    const cells = form.cells(readable.map(bodyOf));
    const cellsOf = new Map(
      readable.map((row, at) => [row, form.fit(cells[at], names.length)] as const),
    );
    return data.map((row) => ({
      row,
      key: isDoubtful(row, columns)
        ? undefined
        : keyOf(filledCells(cellsOf.get(row), row), columns),
    }));
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

/** A cell that cannot be taken names no exam. */
function isDoubtful({ notes = [] }: Row, columns: readonly number[]): boolean {
  return notes.some(({ column, note }) => note !== 'formula' && columns.includes(column));
}
