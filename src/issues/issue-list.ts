import { bounds, type Ended } from './budget.ts';
import { type Issue, issue, type Severity } from './issue.ts';

/**
 * The issues in their order, no more than a call lists, with one at the end that counts the rest.
 * Errors are kept before warnings and these before remarks, so that no flood of remarks hides an error.
 */
export function cutIssues(
  issues: readonly Issue[],
  most: number = bounds().issues,
): readonly Issue[] {
  if (issues.length <= most) return issues;
  const kept = new Set<Issue>();
  for (const wanted of severities) {
    for (const found of issues) {
      if (kept.size === most) break;
      if (found.severity === wanted) kept.add(found);
    }
  }
  const left = issues.filter((found) => !kept.has(found));
  const worst = severities.find((wanted) => left.some(({ severity }) => severity === wanted));
  return [...issues.filter((found) => kept.has(found)), restIssue(left.length, worst)];
}

const severities: readonly Severity[] = ['error', 'warning', 'information'];

/** Says that there is more, as severe as the worst of it. */
export function restIssue(count: number, severity: Severity = 'error'): Issue {
  return issue('issues-cut', [], { reason: 'rest', count, maximum: bounds().issues }, { severity });
}

/** Says why a call was ended before it was done. */
export function endedIssue(why: Ended): Issue {
  return why.reason === 'aborted'
    ? issue('aborted', [], { reason: 'signal' })
    : issue('too-large', [], why);
}

/** Where a text is longer than the budget has it; not looked into any further. */
export function longTextIssues(text: string): Issue[] {
  const { characters } = bounds();
  if (text.length <= characters) return [];
  return [issue('too-large', [], { reason: 'text', maximum: characters })];
}
