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

export function timeOf(field: DateField, { fields, plan }: Work): Time {
  const { from: names, time } =
    typeof field === 'string' ? { from: field, time: undefined } : field;
  const choice = typeof names === 'string' ? [names] : names;
  const from = choice.find((name) => fields.text(name) !== undefined) ?? choice[0] ?? '';
  const parts = [fields.text(from), fields.text(time)].filter((part) => part !== undefined);
  if (fields.text(from) === undefined) return { name: from };
  return { name: from, ...plan.dates(field)(parts.join(' ')) };
}

/** A moment that the exam needs. */
export function vitalTime(field: DateField, work: Work): string | undefined {
  const { value, problem, codes, name } = timeOf(field, work);
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
    const whole = work.plan.dates({ from: name, formats: ['YYYY-MM-DD HH:mm'] })(
      `${value} ${timeOfDay}`,
    );
    if (whole.value?.includes('T')) {
      const details = { severity: 'information', source: work.fields.first(name)?.at } as const;
      work.issues.push(issue('missing-zone', [name], { reason: 'time-of-day' }, details));
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
