import { type Issue, issue } from '../../issue.ts';
import { isPlainObject, isSame } from '../../plain-data.ts';
import type { Conclusion } from '../conclusion.ts';
import type { Exam } from '../exam.ts';
import type { Key } from '../primitive.ts';
import type { Statement } from '../statement.ts';

/**
 * What a step changes. A statement is never taken out: one that was wrong is stated anew under its
 * own key, so that every receiver of the record learns what holds in its place.
 */
export interface Changes {
  /** New statements, and statements that take the place of those with the same keys. */
  readonly statements?: readonly Statement[];
  /** Takes the place of the conclusion before it. */
  readonly conclusion?: Conclusion;
}

export interface Changed {
  readonly exam: Exam;
  /** Keys of the statements that are new or differ from before. */
  readonly changed: readonly Key[];
}

/** What keeps changes from being applied; what they hold is checked with the exam that they make. */
export function changeIssues(changes: unknown): Issue[] {
  if (!isPlainObject(changes)) {
    return [issue('wrong-type', ['changes'], { reason: 'not-an-object' })];
  }
  const { statements = [] } = changes;
  const path = ['changes', 'statements'];
  if (!Array.isArray(statements)) return [issue('wrong-type', path, { reason: 'not-a-list' })];
  return statements.flatMap((statement: unknown, at) =>
    isPlainObject(statement)
      ? []
      : [issue('wrong-type', [...path, at], { reason: 'not-an-object' })],
  );
}

/** The exam with the changes; an issue where they change nothing. */
export function applyChanges(exam: Exam, changes: Changes): Changed | Issue {
  const given = new Map((changes.statements ?? []).map((statement) => [statement.key, statement]));
  const kept = exam.statements.map((statement) => given.get(statement.key) ?? statement);
  const known = new Set(exam.statements.map(({ key }) => key));
  const added = [...given.values()].filter(({ key }) => !known.has(key));
  const statements = [...kept, ...added];
  const changed = statements.filter((statement, at) => !isSame(statement, exam.statements[at]));
  const { conclusion = exam.conclusion } = changes;
  if (changed.length === 0 && isSame(conclusion, exam.conclusion)) {
    return issue('nothing-changed', ['statements'], { reason: 'same' });
  }
  return {
    exam: { ...exam, statements, ...(conclusion && { conclusion }) },
    changed: changed.map(({ key }) => key),
  };
}

/** What an addition may not do: change something that the record says already. */
export function overwritten(exam: Exam, { statements = [], conclusion }: Changes): Issue[] {
  const known = new Map(exam.statements.map((statement) => [statement.key, statement]));
  const issues = statements.flatMap(({ key }, at) =>
    known.has(key)
      ? [issue('duplicate-key', ['statements', at, 'key'], { reason: 'addition' })]
      : [],
  );
  if (conclusion !== undefined && exam.conclusion !== undefined) {
    issues.push(issue('contradiction', ['conclusion'], { reason: 'conclusion' }));
  }
  return issues;
}
