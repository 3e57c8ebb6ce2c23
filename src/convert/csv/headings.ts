import { issue } from '../issue.ts';
import type { TableRows } from '../mapping/source.ts';
import type { RawUnit } from '../record/record.ts';
import { columnNames, renamedColumns } from './cells.ts';
import { type Row, rowBody } from './row-splitter.ts';
import { rowUnit } from './row-unit.ts';
import type { TableForm } from './table-form.ts';

/**
 * Longest row of headings, in characters: some thousand columns. Quarantine repeats it with every row,
 * so that without a bound a small table could become a very large file.
 */
const LONGEST_HEADING = 65_536;

export interface HeadingReader {
  /** Names of the columns, once they are known. */
  readonly names: () => readonly string[] | undefined;
  /** Takes the rows up to the last of the headings away; units for those that can not be read. */
  readonly take: (rows: Row[]) => RawUnit[];
}

/** Reads what stands before the data of a table: lines of a title, a line `sep=`, the headings. */
export function headingReader(
  form: TableForm,
  source: TableRows,
  decode: (bytes: string) => string,
): HeadingReader {
  const namesOf = (headings: readonly string[]): readonly string[] =>
    renamedColumns(columnNames(headings), source);
  const stated = form.columns ?? source.header;
  let names = stated === undefined ? undefined : namesOf(stated);
  const headings: string[][] = [];

  const takeOne = (row: Row): RawUnit | undefined => {
    const named = headings.length === 0 && form.delimiter ? delimiterNamed(row) : undefined;
    if (named !== undefined) return named === form.delimiter ? undefined : otherDelimiter(row);
    const cells = row.fault === undefined ? form.cells([rowBody(row.text)])[0] : [];
    headings.push((cells ?? []).map(decode));
    if (headings.length < (source.headingRows ?? 1)) return undefined;
    names = namesOf(joinedHeadings(headings));
    return names.length === 0 ? rowUnit([row], names) : undefined;
  };
  return {
    names: () => names,
    take: (rows) => {
      const units: RawUnit[] = [];
      while (names === undefined && rows.length > 0) {
        const [first] = rows.splice(0, 1).map(bounded);
        if (first === undefined) continue;
        const unit = takeOne(first);
        if (unit !== undefined) units.push(unit);
      }
      return units;
    },
  };
}

/** The delimiter that a spreadsheet names in a first line such as `sep=;`. */
function delimiterNamed({ text }: Row): string | undefined {
  return /^sep=(.)$/.exec(rowBody(text).trim())?.[1];
}

function otherDelimiter(row: Row): RawUnit {
  const details = { source: { line: row.line } };
  return rowUnit([row], [], [issue('invalid-value', [], { reason: 'delimiter' }, details)]);
}

function bounded(heading: Row): Row {
  return heading.text.length > LONGEST_HEADING ? { ...heading, fault: 'too-large' } : heading;
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
