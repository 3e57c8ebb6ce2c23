import type { Issue } from '../../../issues/issue.ts';
import { addCounts, type LedgerCounts, noFields } from '../../exams/ledger.ts';
import type { UnitOutcome } from '../convert-batch.ts';
import { positionless } from '../issue-name.ts';

/** Numbers of a run so far. Plain data, and no times: the same input gives the same numbers. */
export interface Tally {
  /** Texts of one exam that were cut out of the inputs. */
  readonly exams: {
    readonly read: number;
    readonly converted: number;
    readonly quarantined: number;
  };
  /** Fields by what became of them; the fates sum to `fields`. */
  readonly fields: LedgerCounts;
  /** Lines by output file. */
  readonly lines: { readonly [file: string]: number };
  /** Quarantined exams by reason. */
  readonly reasons: { readonly [code: string]: number };
  /** Issues by severity, code and field name. */
  readonly issues: { readonly [name: string]: number };
}

export const emptyTally: Tally = {
  exams: { read: 0, converted: 0, quarantined: 0 },
  fields: noFields,
  lines: {},
  reasons: {},
  issues: {},
};

/** Counts in place, since a run has millions of units. */
export interface Counter {
  readonly converted: (outcome: UnitOutcome) => void;
  readonly quarantined: (outcome: UnitOutcome, reason: string) => void;
  readonly issue: (found: Issue) => void;
  /** Exams so far. */
  readonly read: () => number;
  readonly tally: () => Tally;
}

export function counter(start: Tally): Counter {
  const exams = { ...start.exams };
  let fields = start.fields;
  const lines = new Map(Object.entries(start.lines));
  const reasons = new Map(Object.entries(start.reasons));
  const issues = new Map(Object.entries(start.issues));
  const add = (map: Map<string, number>, key: string): void => {
    map.set(key, (map.get(key) ?? 0) + 1);
  };
  const countIssue = (found: Issue): void => add(issues, positionless(found));
  return {
    converted: (outcome) => {
      exams.read += 1;
      exams.converted += 1;
      fields = addCounts(fields, outcome.counts);
      for (const { file } of outcome.exam?.lines ?? []) add(lines, file);
      outcome.issues.forEach(countIssue);
    },
    quarantined: (outcome, reason) => {
      exams.read += 1;
      exams.quarantined += 1;
      const { fields: all } = outcome.counts;
      fields = addCounts(fields, { ...noFields, fields: all, quarantined: all });
      add(reasons, reason);
      outcome.issues.forEach(countIssue);
    },
    issue: countIssue,
    read: () => exams.read,
    tally: () => ({
      exams: { ...exams },
      fields,
      lines: sorted(lines),
      reasons: sorted(reasons),
      issues: sorted(issues),
    }),
  };
}

function sorted(map: ReadonlyMap<string, number>): { readonly [key: string]: number } {
  return Object.fromEntries([...map].sort(([one], [other]) => (one < other ? -1 : 1)));
}
