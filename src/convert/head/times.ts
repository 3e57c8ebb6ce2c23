import type { IssueCode } from '../../issue.ts';
import type { DateField, FieldName } from '../mapping.ts';
import { keepAsText, refuse, type Work } from './work.ts';

export interface Time {
  readonly name: FieldName;
  readonly value?: string;
  readonly problem?: IssueCode;
  readonly expected?: string;
}

export function timeOf(field: DateField, { fields, plan }: Work): Time {
  const { from, time } = typeof field === 'string' ? { from: field, time: undefined } : field;
  const parts = [fields.text(from), fields.text(time)].filter((part) => part !== undefined);
  if (fields.text(from) === undefined) return { name: from };
  return { name: from, ...plan.dates(field)(parts.join(' ')) };
}

export function vitalTime(field: DateField, what: string, work: Work): string | undefined {
  const { value, problem, expected, name } = timeOf(field, work);
  if (value === undefined) {
    const message = `the record does not say when the exam was ${what}, in a form the mapping states`;
    refuse(work, problem ?? 'missing-field', name, message, expected);
  } else if (problem !== undefined) {
    keepAsText(
      work,
      problem,
      name,
      'only the date is taken over; the time is kept as text',
      expected,
    );
  }
  return value;
}

export function optionalTime(field: DateField | undefined, work: Work): string | undefined {
  if (field === undefined) return undefined;
  const { value, problem, expected, name } = timeOf(field, work);
  if (problem === undefined) return value;
  keepAsText(work, problem, name, 'the time can not be read; it is kept as text', expected);
  return undefined;
}

export function recordedOf(work: Work): string | undefined {
  const { from, value: fixed } = work.plan.mapping.exam.recorded;
  if (from === undefined) return fixed;
  const { value, problem, expected, name } = timeOf(from, work);
  // `recorded` is a moment: a date alone does not do.
  if (value?.includes('T')) return value;
  if (value === undefined && problem === undefined && fixed !== undefined) return fixed;
  if (fixed !== undefined) {
    keepAsText(
      work,
      problem ?? 'unreadable-date',
      name,
      'the time of recording can not be read',
      expected,
    );
    return fixed;
  }
  const message = 'the record does not say when it was written, to the second and with its zone';
  refuse(work, problem ?? 'missing-field', name, message, expected);
  return undefined;
}
