import type { Issue } from '../../issues/issue.ts';
import { issue } from '../issue.ts';
import type { RawUnit } from '../record/record.ts';
import type { Row, RowFault } from './row-splitter.ts';

/** What is wrong with a row, as an issue. */
export function rowIssue(fault: RowFault, line: number): Issue {
  const details = { source: { line } };
  switch (fault) {
    case 'unclosed-quote':
      return issue(fault, [], { reason: 'row' }, details);
    case 'malformed-record':
      return issue(fault, [], { reason: 'columns' }, details);
    case 'too-large':
      return issue(fault, [], { reason: 'row' }, details);
  }
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
    at: { line: first?.line ?? 1, ...(first?.sheet !== undefined && { sheet: first.sheet }) },
    header,
    lines: rows.map((row) => row.line),
    ...(rows.some(({ filled }) => filled !== undefined) && {
      filled: rows.map(({ filled = [] }) =>
        filled.map(({ column, text, line, note }) => ({
          ...{ column, text, line },
          ...(note && { note }),
        })),
      ),
    }),
    ...(rows.some(({ notes }) => notes !== undefined) && {
      notes: rows.map(({ notes = [] }) => notes),
    }),
    ...(issues.length > 0 && { issues }),
  };
}

/** The last row of a file may lack its line ending, and rows held back may come to stand behind it. */
function ended(text: string): string {
  return /[\r\n]$/.test(text) ? text : `${text}\n`;
}
