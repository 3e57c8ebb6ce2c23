import { type Issue, issue } from '../../issue.ts';
import type { Path } from '../../path.ts';
import { formatProblems } from '../date.ts';
import type { DateField, Mapping } from '../mapping.ts';
import { zoneOf } from '../zone.ts';

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
      issues.push(...formatIssues(field.formats ?? [], [...path, 'formats']));
  }
  if (dates?.zone !== undefined && zoneOf(dates.zone) === undefined) {
    const expected = 'an offset such as +01:00, or a name such as Europe/Lisbon';
    issues.push(
      issue('invalid-value', ['dates', 'zone'], 'there is no such time zone', { expected }),
    );
  }
  return issues;
}

function formatIssues(formats: readonly string[], path: Path): Issue[] {
  return formatProblems(formats).map(({ at, problem }) =>
    problem === 'invalid-value'
      ? issue(problem, [...path, at], 'this is no date form', {
          expected: 'a form of YYYY, MM, DD, HH, mm, ss, such as DD/MM/YYYY HH:mm',
        })
      : issue(
          problem,
          [...path, at],
          'a date in this form can be read by an earlier form otherwise',
          {
            expected: 'forms that can not be mistaken for each other',
          },
        ),
  );
}
