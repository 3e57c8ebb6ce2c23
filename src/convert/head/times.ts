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
  const found: Time[] = [];
  let fitting: Time | undefined;
  // A field further down is not asked, so that its repetitions can contradict nothing.
  for (const name of choice) {
    const text = fields.text(name);
    if (text === undefined) continue;
    const parts = [text, fields.text(time)].filter((part) => part !== undefined);
    const one: Time = { name, ...plan.dates(field)(parts.join(' ')) };
    found.push(one);
    const { value } = one;
    if (value === undefined || (latest !== undefined && isAfter(value, latest))) continue;
    fitting = one;
    break;
  }
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
  const { from, value: fixed } = work.plan.mapping.exam.recorded;
  if (from === undefined) return fixed;
  const { value, problem, codes, name } = timeOf(from, work);
  // `recorded` is a moment: a date alone does not do.
  if (value?.includes('T')) return value;
  const moment = problem === undefined ? momentOf(value, work) : undefined;
  if (moment !== undefined) {
    const details = { severity: 'information', source: work.fields.first(name)?.at } as const;
    work.issues.push(issue('missing-zone', [name], { reason: 'time-of-day' }, details));
    return moment;
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

/**
 * The moment that a date alone stands for: the time of day that the mapping states, or when the exam
 * began, where that was later on this day, since it was not written before.
 */
function momentOf(day: string | undefined, work: Work): string | undefined {
  const { recorded, performed } = work.plan.mapping.exam;
  if (day?.length !== 10 || recorded.timeOfDay === undefined) return undefined;
  const start = timeOf(performed.start, { ...work, issues: [] }).value;
  if (start?.includes('T') && start.startsWith(day)) return start;
  const dates = work.plan.dates({ from: [''], formats: ['YYYY-MM-DD HH:mm'] });
  const { value } = dates(`${day} ${recorded.timeOfDay}`);
  return value?.includes('T') ? value : undefined;
}
