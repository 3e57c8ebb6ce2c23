import { columnNames, readCells } from '../csv/cells.ts';
import { rowBody, rowSplitter } from '../csv/row-splitter.ts';
import type { CsvSource } from '../mapping/source.ts';
import { headNamesOf } from './head-names.ts';

/** Rows that are looked at. */
const ROWS = 500;

/** Delimiter by which most rows have as many cells as the first, and the exam column where it repeats. */
export function guessCsvSource(text: string): CsvSource {
  const tried = ([',', ';', '\t', '|'] as const).map((delimiter) => ({
    delimiter,
    ...table(text, delimiter),
  }));
  const best = tried.reduce((one, other) => (other.score > one.score ? other : one));
  const source = { syntax: 'csv' as const, delimiter: best.delimiter };
  const fields = best.header.map((name, at) => ({
    name,
    words: best.rows.map((cells) => cells[at]?.trim() ?? '').filter((cell) => cell !== ''),
  }));
  const { exam } = headNamesOf(source, fields);
  if (exam === undefined) return source;
  const column = best.header.indexOf(exam);
  const ids = best.rows.map((cells) => cells[column]?.trim() ?? '').filter((id) => id !== '');
  return new Set(ids).size < ids.length ? { ...source, groupBy: [exam] } : source;
}

interface Table {
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Cells in rows of the right width. */
  readonly score: number;
}

function table(text: string, delimiter: string): Table {
  const splitter = rowSplitter(delimiter);
  const found = [...splitter.push(text.replace(/^\uFEFF/, '')), ...splitter.end()];
  const bodies = found
    .filter(({ fault }) => fault === undefined)
    .map((row) => rowBody(row.text))
    .filter((body) => body !== '')
    .slice(0, ROWS);
  const [first = [], ...rows] = readCells(bodies, delimiter).filter((cells) => cells !== undefined);
  const fitting = rows.filter((cells) => cells.length === first.length);
  const score = first.length < 2 ? 0 : fitting.length * first.length;
  return { header: columnNames(first), rows: fitting, score };
}
