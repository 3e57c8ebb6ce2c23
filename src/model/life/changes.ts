import { isPlainObject, isSame } from '../../data/plain-data.ts';
import { type Issue, issue } from '../../issues/issue.ts';
import type { Conclusion } from '../conclusion.ts';
import type { Exam } from '../exam.ts';
import type { Key } from '../primitive.ts';
import type { Statement } from '../statement.ts';

/**
 * What a step changes. A statement that was wrong is stated anew under its own key, or withdrawn where
 * nothing takes its place, so that every receiver of the record learns of it.
 */
export interface Changes {
  /** New statements, and statements that take the place of those with the same keys. */
  readonly statements?: readonly Statement[];
  /** Keys of statements that should not have been made. */
  readonly withdraw?: readonly Key[];
  /**
   * Where `statements` is all that a form holds: what becomes of the statements of the exam that it
   * lacks. Default: they are kept, and where `statements` repeats some as they are, which only a whole
   * form does, each one that is lacking is told.
   */
  readonly lacking?: 'keep' | 'withdraw';
  /** Takes the place of the conclusion before it. */
  readonly conclusion?: Conclusion;
}

export interface Changed {
  /** Left out where the changes are unsound or change nothing. */
  readonly exam?: Exam;
  /** Keys of the statements that are new or differ from before. */
  readonly changed: readonly Key[];
  readonly withdrawn: readonly Key[];
  readonly issues: readonly Issue[];
}

/** What keeps changes from being applied; what they hold is checked with the exam that they make. */
export function changeIssues(changes: unknown): Issue[] {
  if (!isPlainObject(changes)) {
    return [issue('wrong-type', ['changes'], { reason: 'not-an-object' })];
  }
  const { statements = [], withdraw = [] } = changes;
  const path = ['changes', 'statements'];
  if (!Array.isArray(statements)) return [issue('wrong-type', path, { reason: 'not-a-list' })];
  if (!Array.isArray(withdraw)) {
    return [issue('wrong-type', ['changes', 'withdraw'], { reason: 'not-a-list' })];
  }
  // By Array.from, which passes over no hole.
  return Array.from(statements as readonly unknown[]).flatMap((statement, at) =>
    isPlainObject(statement)
      ? []
      : [issue('wrong-type', [...path, at], { reason: 'not-an-object' })],
  );
}

/** The exam with the changes. */
export function applyChanges(exam: Exam, changes: Changes): Changed {
  const given = new Map((changes.statements ?? []).map((statement) => [statement.key, statement]));
  const known = new Set(exam.statements.map(({ key }) => key));
  const asked = withdrawalIssues(changes, given, known);
  const none = { changed: [], withdrawn: [] };
  if (asked.length > 0) return { ...none, issues: asked };

  const lacking = exam.statements.map(({ key }) => key).filter((key) => !given.has(key));
  const gone = new Set(changes.lacking === 'withdraw' ? lacking : (changes.withdraw ?? []));
  const kept = exam.statements.filter(({ key }) => !gone.has(key));
  const before = new Map(kept.map((statement) => [statement.key, statement]));
  const added = [...given.values()].filter(({ key }) => !known.has(key));
  const statements = [...kept.map((one) => given.get(one.key) ?? one), ...added];
  const changed = statements.filter((one) => !isSame(one, before.get(one.key)));
  const { conclusion = exam.conclusion } = changes;
  if (changed.length === 0 && gone.size === 0 && isSame(conclusion, exam.conclusion)) {
    return { ...none, issues: [issue('nothing-changed', ['statements'], { reason: 'same' })] };
  }
  const isWhole = [...given.values()].some(
    (one) => before.has(one.key) && isSame(one, before.get(one.key)),
  );
  const told = changes.lacking === undefined && isWhole ? lacking : [];
  return {
    exam: { ...exam, statements, ...(conclusion && { conclusion }) },
    changed: changed.map(({ key }) => key),
    withdrawn: exam.statements.flatMap(({ key }) => (gone.has(key) ? [key] : [])),
    issues: told.filter((key) => !gone.has(key)).map(lackingIssue),
  };
}

function lackingIssue(key: Key): Issue {
  return issue(
    'lacking-statement',
    ['statements'],
    { reason: 'kept' },
    { severity: 'warning', statement: key },
  );
}

function withdrawalIssues(
  { withdraw = [] }: Changes,
  given: ReadonlyMap<Key, Statement>,
  known: ReadonlySet<Key>,
): Issue[] {
  return withdraw.flatMap((key, at) => {
    const path = ['withdraw', at];
    if (!known.has(key)) return [issue('unresolved-key', path, { reason: 'exam' })];
    if (!given.has(key)) return [];
    return [issue('contradiction', path, { reason: 'stated-and-withdrawn' }, { statement: key })];
  });
}

/** What an addition may not do: change or take out something that the record says already. */
export function overwritten(exam: Exam, changes: Changes): Issue[] {
  const { statements = [], conclusion, withdraw = [], lacking } = changes;
  const known = new Map(exam.statements.map((statement) => [statement.key, statement]));
  const issues = statements.flatMap(({ key }, at) =>
    known.has(key)
      ? [issue('duplicate-key', ['statements', at, 'key'], { reason: 'addition' })]
      : [],
  );
  if (withdraw.length > 0 || lacking === 'withdraw') {
    issues.push(issue('contradiction', ['withdraw'], { reason: 'addition-withdraws' }));
  }
  if (conclusion !== undefined && exam.conclusion !== undefined) {
    issues.push(issue('contradiction', ['conclusion'], { reason: 'conclusion' }));
  }
  return issues;
}
