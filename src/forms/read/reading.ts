import { jsonText } from '../../data/json-text.ts';
import { bounds } from '../../issues/budget.ts';
import { answers } from '../../issues/english/answers.ts';
import type { FactsFor } from '../../issues/facts.ts';
import { type Issue, issuesOf, type Severity } from '../../issues/issue.ts';
import { restIssue } from '../../issues/issue-list.ts';
import { firstNearest, type nearest } from '../../issues/nearest.ts';
import type { Path } from '../../issues/path.ts';

type Code = keyof typeof answers;

/** Tells an issue about an answer; a value of the data is shown only where the caller allows that. */
type Report = <C extends Code>(
  code: C,
  path: Path,
  facts: FactsFor<typeof answers, C>,
  value?: unknown,
) => void;

/** One reading of a response: what was found so far, and how it is told. */
export interface Reading {
  /** What was found, no more than a call lists of each severity, and how many more. */
  readonly all: () => readonly Issue[];
  readonly nearest: typeof nearest;
  /** An error: nothing is read. */
  readonly report: Report;
  /** Someone should look. */
  readonly warn: Report;
  readonly tell: (severity: Severity) => Report;
}

const issue = /*@__PURE__*/ issuesOf(answers);

export function newReading(includeValues: boolean): Reading {
  const most = bounds().issues;
  const issues: Issue[] = [];
  const counts: Record<Severity, number> = { error: 0, warning: 0, information: 0 };
  const tell =
    (severity: Severity): Report =>
    (code, path, facts, value) => {
      counts[severity] += 1;
      // A million faults are not made to list a thousand of them.
      if (counts[severity] > most) return;
      const received = includeValues && value !== undefined ? jsonText(value) : undefined;
      issues.push(issue(code, path, facts, { severity, received }));
    };
  const all = (): readonly Issue[] => {
    const more = Object.values(counts).reduce((sum, count) => sum + Math.max(0, count - most), 0);
    return more === 0 ? issues : [...issues, restIssue(more)];
  };
  return { all, nearest: firstNearest(), report: tell('error'), warn: tell('warning'), tell };
}
