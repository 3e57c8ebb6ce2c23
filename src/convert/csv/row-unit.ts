import { type Issue, issue } from '../../issue.ts';
import type { RawUnit } from '../record.ts';
import type { Row, RowFault } from './row-splitter.ts';

const faults: { readonly [Fault in RowFault]: string } = {
  'unclosed-quote': 'the row has a quote that is not closed',
  'malformed-record': 'the row can not be split into the columns of the table',
  'too-large': 'the row is longer than the limit',
};

/** What is wrong with a row, as an issue. */
export function rowIssue(fault: RowFault, line: number): Issue {
  const expected =
    'one cell for each heading; a cell that holds a quote is quoted and its quotes doubled';
  return issue(fault, [], faults[fault], { expected, source: { line } });
}

/** Unit of the rows of one exam. A row that is wrong by itself takes the unit to quarantine. */
export function rowUnit(
  rows: readonly Row[],
  header: readonly string[],
  more: readonly Issue[] = [],
): RawUnit {
  const [first] = rows;
  const alone = rows.length === 1 && first?.fault !== undefined;
  const issues = alone ? [rowIssue(first.fault, first.line), ...more] : more;
  return {
    raw: rows.map((row) => ended(row.text)).join(''),
    at: { line: first?.line ?? 1 },
    header,
    lines: rows.map((row) => row.line),
    ...(issues.length > 0 && { issues }),
  };
}

/** The last row of a file may lack its line ending, and rows held back may come to stand behind it. */
function ended(text: string): string {
  return /[\r\n]$/.test(text) ? text : `${text}\n`;
}
