import type { Issue, SourcePosition } from '../../issues/issue.ts';
import type { Cells } from '../csv/cells.ts';
import { tableReader } from '../csv/reader.ts';
import type { TableForm } from '../csv/table-form.ts';
import { issue } from '../issue.ts';
import type { FixedColumn, FixedSource } from '../mapping/source.ts';
import type { Reader } from '../record/record.ts';
import { lineRows } from './line-rows.ts';

/** Reader for lines in which each column has its place. */
export function fixedReader(source: FixedSource): Reader {
  return tableReader(fixedForm(source), source);
}

/** Places of a column in a line: from the first character, to behind the last, counted from 0. */
interface Span {
  readonly from: number;
  readonly to: number;
}

/** The lines of a source as a table; spaces at the end of a column fill it. Text between its columns is kept in further cells. */
export function fixedForm(source: FixedSource): TableForm {
  const spans = source.columns.map(spanOf);
  const gaps = gapsBetween(spans);
  const all = [...spans, ...gaps];
  const width = spans.reduce((most, { to }) => Math.max(most, to), 0);
  const faultIn = (body: string): 'short-line' | 'long-line' | 'tab' | undefined => {
    if (body.includes('\t')) return 'tab';
    if (body.slice(width).trim() !== '') return 'long-line';
    return body.length < width && source.trimmed !== true ? 'short-line' : undefined;
  };
  return {
    rows: lineRows,
    cells: (bodies) =>
      bodies.map(
        (body): Cells =>
          faultIn(body) === undefined
            ? all.map(({ from, to }) => body.slice(from, to).trimEnd())
            : undefined,
      ),
    fit: (cells) => cells,
    isEmpty: (text) => text.replaceAll('\u001a', '').trim() === '',
    columns: source.columns.map(({ name }) => name),
    furtherName: (column) => {
      const { from, to } = all[column] ?? { from: 0, to: 0 };
      return `#${from + 1}-${to}`;
    },
    place: (_unit, line, column): SourcePosition => ({
      line,
      ...(column !== undefined && { column: (all[column - 1]?.from ?? 0) + 1 }),
    }),
    fault: (body, line) => {
      const fault = faultIn(body);
      return fault && lineIssue(fault, line, width);
    },
    byPlace: true,
  };
}

function lineIssue(fault: 'short-line' | 'long-line' | 'tab', line: number, width: number): Issue {
  const facts = fault === 'tab' ? { reason: fault } : { reason: fault, count: width };
  return issue('malformed-record', [], facts, { source: { line } });
}

function spanOf({ start, length, end }: FixedColumn): Span {
  const from = start - 1;
  return { from, to: length === undefined ? (end ?? from) : from + length };
}

/** What stands between the columns, or before the first. */
function gapsBetween(spans: readonly Span[]): readonly Span[] {
  let reached = 0;
  return [...spans]
    .sort((one, other) => one.from - other.from)
    .flatMap(({ from, to }) => {
      const gap = { from: reached, to: from };
      reached = Math.max(reached, to);
      return gap.from < gap.to ? [gap] : [];
    });
}

/** Columns that share a place or a name, or that end before they begin. */
export function columnIssues({ columns }: FixedSource): Issue[] {
  const seen = new Set<string>();
  return columns.flatMap((column, at) => {
    const path = ['source', 'columns', at];
    const { from, to } = spanOf(column);
    const ends = [column.length, column.end].filter((one) => one !== undefined);
    if (to <= from || ends.length !== 1) {
      return [issue('invalid-value', path, { reason: 'column-end' })];
    }
    const isTwice = seen.has(column.name);
    seen.add(column.name);
    const overlaps = columns
      .slice(0, at)
      .map(spanOf)
      .some((other) => from < other.to && other.from < to);
    return isTwice || overlaps ? [issue('ambiguous-mapping', path, { reason: 'column' })] : [];
  });
}
