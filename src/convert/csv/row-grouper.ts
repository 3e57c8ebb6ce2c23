import { append } from '../../data/append.ts';
import type { Issue } from '../../issues/issue.ts';
import { issue } from '../issue.ts';
import type { RawUnit } from '../record/record.ts';
import type { Row } from './row-splitter.ts';
import { rowUnit } from './row-unit.ts';

/** A row and the exam it belongs to; no key where the row cannot tell. */
export interface KeyedRow {
  readonly row: Row;
  readonly key: string | undefined;
}

export interface RowGrouper {
  readonly push: (rows: readonly KeyedRow[], header: readonly string[]) => RawUnit[];
  readonly end: (header: readonly string[]) => RawUnit[];
}

/** Most rows of one exam, and most characters held back for rows that stand anywhere. */
const MOST_ROWS = 50_000;
const MOST_HELD = 268_435_456;

/** Puts the rows of one exam together. */
export function rowGrouper(rows: 'adjacent' | 'anywhere'): RowGrouper {
  return rows === 'adjacent' ? adjacentRows() : rowsAnywhere();
}

function adjacentRows(): RowGrouper {
  let key: string | undefined;
  let group: Row[] = [];
  /** Rows that cannot be read, behind the group: part of it only if it goes on after them. */
  let doubtful: Row[] = [];
  let tooLarge = false;

  const flush = (header: readonly string[]): RawUnit[] => {
    const issues = tooLarge ? [largeGroup()] : [];
    const units = group.length > 0 ? [rowUnit(group, header, issues)] : [];
    append(
      units,
      doubtful.map((row) => strayUnit(row, header)),
    );
    group = [];
    doubtful = [];
    return units;
  };
  return {
    push: (keyed, header) => {
      const units: RawUnit[] = [];
      for (const { row, key: next } of keyed) {
        if (next === undefined) {
          doubtful.push(row);
          if (group.length === 0 || doubtful.length > MOST_ROWS) append(units, flush(header));
          continue;
        }
        if (next !== key) {
          append(units, flush(header));
          tooLarge = false;
        } else if (group.length >= MOST_ROWS) {
          tooLarge = true;
          append(units, flush(header));
        }
        key = next;
        append(group, doubtful);
        group.push(row);
        doubtful = [];
      }
      return units;
    },
    end: flush,
  };
}

function rowsAnywhere(): RowGrouper {
  const groups = new Map<string, Row[]>();
  let held = 0;
  return {
    push: (keyed, header) => {
      const units: RawUnit[] = [];
      for (const { row, key } of keyed) {
        held += row.text.length;
        const group = key === undefined ? undefined : groups.get(key);
        if (key === undefined) units.push(strayUnit(row, header));
        else if (held > MOST_HELD) units.push(rowUnit([row], header, [largeGroup()]));
        else if (group === undefined) groups.set(key, [row]);
        else group.push(row);
      }
      return units;
    },
    end: (header) => {
      const issues = held > MOST_HELD ? [largeGroup()] : [];
      const units = [...groups.values()].map((group) => rowUnit(group, header, issues));
      groups.clear();
      return units;
    },
  };
}

function strayUnit(row: Row, header: readonly string[]): RawUnit {
  if (row.fault !== undefined) return rowUnit([row], header);
  return rowUnit([row], header, [
    issue('malformed-record', [], { reason: 'stray-row' }, { source: { line: row.line } }),
  ]);
}

function largeGroup(): Issue {
  return issue('too-large', [], { reason: 'rows', maximum: MOST_ROWS });
}
