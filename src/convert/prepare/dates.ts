import { append } from '../../data/append.ts';
import type { Issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import { issue } from '../issue.ts';
import type { DateField, Mapping } from '../mapping/mapping.ts';
import { formatProblems } from '../values/date.ts';
import { zoneOf } from '../values/zone.ts';

/** Date forms that are none or can be mistaken for each other, and unknown zones. */
export function dateIssues({ dates, exam, items }: Mapping): Issue[] {
  const fields: [DateField | undefined, Path][] = [
    [exam.performed.start, ['exam', 'performed', 'start']],
    [exam.performed.end, ['exam', 'performed', 'end']],
    [exam.recorded.from, ['exam', 'recorded', 'from']],
    [exam.subject.birthDate, ['exam', 'subject', 'birthDate']],
    ...(items ?? []).map((one, at): [DateField | undefined, Path] => [one.at, ['items', at, 'at']]),
  ];
  const issues = formatIssues(dates?.formats ?? [], ['dates', 'formats']);
  for (const [field, path] of fields) {
    if (typeof field === 'object')
      append(issues, formatIssues(field.formats ?? [], [...path, 'formats']));
  }
  if (dates?.zone !== undefined && zoneOf(dates.zone) === undefined) {
    issues.push(issue('invalid-value', ['dates', 'zone'], { reason: 'zone' }));
  }
  return issues;
}

function formatIssues(formats: readonly string[], path: Path): Issue[] {
  return formatProblems(formats).map(({ at, problem }) =>
    problem === 'invalid-value'
      ? issue(problem, [...path, at], { reason: 'date-form' })
      : issue(problem, [...path, at], { reason: 'date-form' }),
  );
}
