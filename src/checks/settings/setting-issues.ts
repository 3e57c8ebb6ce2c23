import { type Issue, issue } from '../../issues/issue.ts';
import type { Exam } from '../../model/exam.ts';
import { exact } from '../figures/decimal.ts';
import { ruleSet } from '../rule-sets.ts';
import type { CheckOptions } from './check-settings.ts';
import { isSettable, type ThresholdSettings, thresholds } from './thresholds.ts';

/** What is wrong with the options of a run. A limit that cannot be read keeps its own value. */
export function optionIssues(options: CheckOptions, exam: Exam): readonly Issue[] {
  return [
    ...limitIssues(options),
    ...(options.ruleSets ?? []).flatMap((id, at) =>
      ruleSet(id) === undefined
        ? [issue('unknown-rule-set', ['options', 'ruleSets', at], { reason: 'id' })]
        : [],
    ),
    ...judgementIssues(options, exam),
  ];
}

/** The options without the limits that cannot be read. */
export function usableOptions(options: CheckOptions): CheckOptions {
  const entries = Object.entries(options.thresholds ?? {});
  const differences = Object.entries(options.sideDifferences ?? {});
  // Keys that the table of thresholds does not hold are never looked up.
  const settings = Object.fromEntries(
    entries.filter(([, value]) => isSettable(value)),
  ) as ThresholdSettings;
  return {
    ...options,
    thresholds: settings,
    sideDifferences: Object.fromEntries(
      differences.filter(([, value]) => exact(value) !== undefined),
    ),
  };
}

function limitIssues(options: CheckOptions): readonly Issue[] {
  const issues: Issue[] = [];
  for (const [id, value] of Object.entries(options.thresholds ?? {})) {
    if (!Object.hasOwn(thresholds, id)) {
      issues.push(issue('unknown-code', ['options', 'thresholds', id], { reason: 'threshold' }));
    } else if (!isSettable(value)) {
      issues.push(issue('invalid-value', ['options', 'thresholds', id], { reason: 'threshold' }));
    }
  }
  for (const [measure, value] of Object.entries(options.sideDifferences ?? {})) {
    if (exact(value) !== undefined) continue;
    issues.push(
      issue('invalid-value', ['options', 'sideDifferences', measure], {
        reason: 'side-difference',
      }),
    );
  }
  return issues;
}

function judgementIssues(options: CheckOptions, exam: Exam): readonly Issue[] {
  const keys = new Set(exam.statements.map((statement) => statement.key));
  return (options.judgements ?? []).flatMap(({ statement }, at) =>
    keys.has(statement)
      ? []
      : [
          issue(
            'unresolved-key',
            ['options', 'judgements', at, 'statement'],
            { reason: 'judgement' },
            {
              severity: 'warning',
            },
          ),
        ],
  );
}
