import { isAfter } from '../../model/time.ts';
import { issue } from '../issue.ts';
import type { DateField, FieldName } from '../mapping/mapping.ts';
import type { DateProblem } from '../values/date.ts';
import { keepAsText, refuse, type Work } from './work.ts';

export interface Time {
  readonly name: FieldName;
  readonly value?: string;
  readonly problem?: DateProblem;
  /** Forms that would have been read. */
  readonly codes?: readonly string[];
}

/**
 * The first of several fields that can be read as a time, and that is not later than `latest`; what is
 * passed over on the way is told. Where none can be read it is the first that holds anything.
 */
export function timeOf(field: DateField, work: Work, latest?: string): Time {
  const { fields, plan } = work;
  const { from: names, time } =
    typeof field === 'string' ? { from: field, time: undefined } : field;
  const choice = typeof names === 'string' ? [names] : names;
  const found = choice.flatMap((name): Time[] => {
    const text = fields.text(name);
    if (text === undefined) return [];
    const parts = [text, fields.text(time)].filter((part) => part !== undefined);
    return [{ name, ...plan.dates(field)(parts.join(' ')) }];
  });
  const fitting = found.find(
    ({ value }) => value !== undefined && !(latest !== undefined && isAfter(value, latest)),
  );
  const chosen = fitting ?? found.find(({ value }) => value !== undefined) ?? found[0];
  if (chosen === undefined) return { name: choice[0] ?? '' };
  for (const passed of found.slice(0, found.indexOf(chosen))) {
    const details = { severity: 'warning', source: fields.first(passed.name)?.at } as const;
    const { problem = 'unreadable-date', codes } = passed;
    work.issues.push(
      passed.value === undefined
        ? issue(problem, [passed.name], { reason: 'time', codes }, details)
        : issue('reversed-dates', [passed.name], { reason: 'passed-over' }, details),
    );
  }
  return chosen;
}

/** A moment that the exam needs, not later than another where there is a choice. */
export function vitalTime(field: DateField, work: Work, latest?: string): string | undefined {
  const { value, problem, codes, name } = timeOf(field, work, latest);
  if (value === undefined) {
    refuse(work, problem ?? 'missing-field', name, { reason: 'performed-start', codes });
  } else if (problem !== undefined) {
    keepAsText(work, problem, name, { reason: 'date-only', codes });
  }
  return value;
}

export function optionalTime(field: DateField | undefined, work: Work): string | undefined {
  if (field === undefined) return undefined;
  const { value, problem, codes, name } = timeOf(field, work);
  if (problem === undefined) return value;
  keepAsText(work, problem, name, { reason: 'time', codes });
  return undefined;
}

export function recordedOf(work: Work): string | undefined {
  const { from, value: fixed, timeOfDay } = work.plan.mapping.exam.recorded;
  if (from === undefined) return fixed;
  const { value, problem, codes, name } = timeOf(from, work);
  // `recorded` is a moment: a date alone does not do.
  if (value?.includes('T')) return value;
  if (value?.length === 10 && problem === undefined && timeOfDay !== undefined) {
    const start = sameDayStart(value, work);
    if (start !== undefined) {
      tellTimeOfDay(name, work);
      return start;
    }
    const whole = work.plan.dates({ from: name, formats: ['YYYY-MM-DD HH:mm'] })(
      `${value} ${timeOfDay}`,
    );
    if (whole.value?.includes('T')) {
      tellTimeOfDay(name, work);
      return whole.value;
    }
  }
  if (value === undefined && problem === undefined && fixed !== undefined) return fixed;
  if (fixed !== undefined) {
    keepAsText(work, problem ?? 'unreadable-date', name, { reason: 'recorded', codes });
    return fixed;
  }
  const cures = ['dates.zone', 'recorded.timeOfDay', 'recorded.value'];
  const helps = [...(codes ?? []), ...cures];
  refuse(work, problem ?? 'missing-field', name, { reason: 'recorded-missing', codes: helps });
  return undefined;
}

/** When the exam began, where that was on the day of a record that has no time: it was not written before. */
function sameDayStart(day: string, work: Work): string | undefined {
  const { value } = timeOf(work.plan.mapping.exam.performed.start, { ...work, issues: [] });
  return value?.includes('T') && value.startsWith(day) ? value : undefined;
}

function tellTimeOfDay(name: FieldName, work: Work): void {
  const details = { severity: 'information', source: work.fields.first(name)?.at } as const;
  work.issues.push(issue('missing-zone', [name], { reason: 'time-of-day' }, details));
}
