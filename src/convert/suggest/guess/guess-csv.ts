import { columnNames } from '../../csv/cells.ts';
import { rowBody } from '../../csv/row-splitter.ts';
import { delimitedForm, type TableForm } from '../../csv/table-form.ts';
import type { CsvSource, TableRows, XlsxSource } from '../../mapping/source.ts';
import { sheetForm } from '../../xlsx/reader.ts';
import { headNamesOf } from '../names/head-names.ts';

/** Rows that are looked at. */
const ROWS = 500;

/** Delimiter by which most rows have as many cells as the first, and the exam column where it repeats. */
export function guessCsvSource(text: string): CsvSource {
  const tried = ([',', ';', '\t', '|'] as const).map((delimiter) => ({
    delimiter,
    ...table(text, delimitedForm({ syntax: 'csv', delimiter })),
  }));
  const best = tried.reduce((one, other) => (other.score > one.score ? other : one));
  return { syntax: 'csv' as const, delimiter: best.delimiter, ...groupingOf(best) };
}

/** The sheet that a text is of, and the exam column where it repeats. */
export function guessSheetSource(text: string, sheet: string | undefined): XlsxSource {
  return {
    syntax: 'xlsx',
    ...(sheet !== undefined && { sheet }),
    ...groupingOf(table(text, sheetForm)),
  };
}

function groupingOf({ header, rows }: Table): Pick<TableRows, 'groupBy'> {
  const fields = header.map((name, at) => ({
    name,
    words: rows.map((cells) => cells[at]?.trim() ?? '').filter((cell) => cell !== ''),
  }));
  const { exam } = headNamesOf({ syntax: 'csv' }, fields);
  if (exam === undefined) return {};
  const column = header.indexOf(exam);
  const ids = rows.map((cells) => cells[column]?.trim() ?? '').filter((id) => id !== '');
  return new Set(ids).size < ids.length ? { groupBy: [exam] } : {};
}

interface Table {
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Cells in rows of the right width. */
  readonly score: number;
}

function table(text: string, form: TableForm): Table {
  const splitter = form.rows();
  const found = [...splitter.push(text.replace(/^\uFEFF/, '')), ...splitter.end()];
  const bodies = found
    .filter(({ fault }) => fault === undefined)
    .map((row) => rowBody(row.text))
    .filter((body) => body !== '')
    .slice(0, ROWS);
  const [first = [], ...rows] = form.cells(bodies).filter((cells) => cells !== undefined);
  const fitting = rows.flatMap((cells) => {
    const whole = form.fit(cells, first.length);
    return whole === undefined ? [] : [whole];
  });
  const score = first.length < 2 ? 0 : fitting.length * first.length;
  return { header: columnNames(first), rows: fitting, score };
}
