import type { Exam } from '../../model/exam.ts';
import type { Statement } from '../../model/statement.ts';
import type { Fate } from '../exams/ledger.ts';
import type { DryRun, TriedExam } from './dry-run.ts';

/** How one exam differs between two mappings of one input. */
export interface ExamDifference {
  /** Place in the list of exams, from 0. */
  readonly index: number;
  readonly before: TriedExam;
  readonly after: TriedExam;
  /** Statements that one of them has alone; one that says something else is in both lists. */
  readonly gone: readonly Statement[];
  readonly fresh: readonly Statement[];
  /** Parts of the exam besides its statements that differ: `performed`, `subject`. */
  readonly parts: readonly string[];
}

/** Fields of a name that meet another fate. */
export interface FateChange {
  readonly name: string;
  readonly from: Fate;
  readonly to: Fate;
  readonly count: number;
}

export interface Differences {
  readonly exams: readonly ExamDifference[];
  readonly fates: readonly FateChange[];
  /** The mappings cut the input into different exams, so that nothing can be set side by side. */
  readonly cutOtherwise: boolean;
}

/**
 * What a change of a mapping changes, on one input.
 *
 * @param before The dry run by the earlier mapping.
 * @param after The dry run of the same text by the later one.
 * @returns Exams that differ, with their statements, and fields by their fates.
 * @example
 * const changed = { ...mapping, dates: { zone: 'Europe/Zurich' } };
 * const { exams, fates } = differencesOf(dryRun(text, mapping), dryRun(text, changed));
 */
export function differencesOf(before: DryRun, after: DryRun): Differences {
  const isSame =
    before.exams.length === after.exams.length &&
    before.exams.every(({ fields }, at) => fields.length === after.exams[at]?.fields.length);
  if (!isSame) return { exams: [], fates: [], cutOtherwise: true };
  const exams = before.exams.flatMap((one, index) => {
    const other = after.exams[index];
    return other === undefined ? [] : differenceOf(index, one, other);
  });
  return { exams, fates: fateChanges(before, after), cutOtherwise: false };
}

function differenceOf(index: number, before: TriedExam, after: TriedExam): ExamDifference[] {
  const told = saidIn(before);
  const now = saidIn(after);
  const gone = (before.exam?.statements ?? []).filter((one) => !now.has(said(one)));
  const fresh = (after.exam?.statements ?? []).filter((one) => !told.has(said(one)));
  const parts = changedParts(before.exam, after.exam);
  const isSame = gone.length + fresh.length + parts.length === 0;
  return isSame ? [] : [{ index, before, after, gone, fresh, parts }];
}

function saidIn({ exam }: TriedExam): ReadonlySet<string> {
  return new Set((exam?.statements ?? []).map(said));
}

/** A statement without its key, which follows from the names of the mapping. */
function said({ key: _key, ...statement }: Statement): string {
  return JSON.stringify(statement);
}

function changedParts(before: Exam | undefined, after: Exam | undefined): readonly string[] {
  if (before === undefined || after === undefined) return before === after ? [] : ['quarantine'];
  const [one, other] = [new Map(Object.entries(before)), new Map(Object.entries(after))];
  return [...new Set([...one.keys(), ...other.keys()])].filter(
    (name) =>
      name !== 'statements' && JSON.stringify(one.get(name)) !== JSON.stringify(other.get(name)),
  );
}

function fateChanges(before: DryRun, after: DryRun): readonly FateChange[] {
  const changes = new Map<string, FateChange>();
  before.exams.forEach(({ fields }, index) => {
    fields.forEach(({ name, fate }, at) => {
      const to = after.exams[index]?.fields[at]?.fate;
      if (to === undefined || to === fate) return;
      const key = JSON.stringify([name, fate, to]);
      changes.set(key, { name, from: fate, to, count: (changes.get(key)?.count ?? 0) + 1 });
    });
  });
  return [...changes.values()].sort((one, other) => other.count - one.count);
}
