import { jsonText } from '../../data/json-text.ts';
import { answers } from '../../issues/english/answers.ts';
import type { FactsFor } from '../../issues/facts.ts';
import { type Issue, issuesOf, type Severity } from '../../issues/issue.ts';
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
  readonly issues: Issue[];
  readonly nearest: typeof nearest;
  /** An error: nothing is read. */
  readonly report: Report;
  /** Someone should look. */
  readonly warn: Report;
  readonly tell: (severity: Severity) => Report;
}

const issue = /*@__PURE__*/ issuesOf(answers);

export function newReading(includeValues: boolean): Reading {
  const issues: Issue[] = [];
  const tell =
    (severity: Severity): Report =>
    (code, path, facts, value) => {
      const received = includeValues && value !== undefined ? jsonText(value) : undefined;
      issues.push(issue(code, path, facts, { severity, received }));
    };
  return {
    issues,
    nearest: firstNearest(),
    report: tell('error'),
    warn: tell('warning'),
    tell,
  };
}
