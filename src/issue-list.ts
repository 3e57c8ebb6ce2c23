import { type Issue, issue, type Severity } from './issue.ts';

/** Issues that one call lists. Whoever has more to mend starts with these. */
export const mostIssues = 1000;

/**
 * The issues in their order, no more than a call lists, with one at the end that counts the rest.
 * Errors are kept before warnings and these before remarks, so that no flood of remarks hides an error.
 */
export function cutIssues(issues: readonly Issue[], most: number = mostIssues): readonly Issue[] {
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
  return issue('issues-cut', [], { reason: 'rest', count, maximum: mostIssues }, { severity });
}
