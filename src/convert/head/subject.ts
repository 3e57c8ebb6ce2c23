import type { Examiner, Subject } from '../../model/people.ts';
import { looksDamaged } from '../damaged.ts';
import type { IdentifierField } from '../mapping.ts';
import { wordMap } from '../word-map.ts';
import { timeOf } from './times.ts';
import { keepAsText, refuse, type Work } from './work.ts';

export function subjectOf(work: Work): Subject | undefined {
  const { subject } = work.plan.mapping.exam;
  const identifiers = (subject.identifiers ?? []).flatMap(
    (field) => identifierOf(field, work) ?? [],
  );
  const [first, ...more] = identifiers;
  const number = work.fields.text(subject.reference?.from);
  const name = nameOf(work);
  if (first === undefined && number === undefined && name === undefined) {
    const from = subject.identifiers?.[0]?.from ?? subject.reference?.from ?? subject.name ?? '';
    refuse(work, 'missing-field', from, { reason: 'subject' });
    return undefined;
  }
  const birthDate = birthDateOf(work);
  const gender = genderOf(work);
  return {
    ...(number !== undefined && { reference: `${subject.reference?.prefix}${number}` }),
    ...(first !== undefined && { identifiers: [first, ...more] }),
    ...(name !== undefined && { name }),
    ...(birthDate !== undefined && { birthDate }),
    ...(gender !== undefined && { gender }),
  };
}

/** An identifier that does not look like one is not guessed at: the exam goes to quarantine. */
function identifierOf(
  { from, system, pattern, where }: IdentifierField,
  work: Work,
): { system: string; value: string } | undefined {
  const value = work.fields.text(from, where);
  if (value === undefined) return undefined;
  const fits =
    pattern === undefined ? !looksDamaged(value) : new RegExp(`^(?:${pattern})$`, 'u').test(value);
  if (fits) return { system, value };
  refuse(work, 'damaged-value', from, { reason: 'patient-number', code: pattern });
  return undefined;
}

function nameOf(work: Work): Subject['name'] | undefined {
  const { subject } = work.plan.mapping.exam;
  const family = work.fields.text(subject.family);
  const given = work.fields.text(subject.given);
  const text = work.fields.text(subject.name);
  if (family === undefined && given === undefined && text === undefined) return undefined;
  return {
    ...(family !== undefined && { family }),
    ...(given !== undefined && { given: [given] }),
    ...(text !== undefined && { text }),
  };
}

function birthDateOf(work: Work): string | undefined {
  const field = work.plan.mapping.exam.subject.birthDate;
  if (field === undefined) return undefined;
  const { value, problem, codes, name } = timeOf(field, work);
  if (value === undefined && problem === undefined) return undefined;
  if (value !== undefined && problem === undefined && !value.includes('T')) return value;
  keepAsText(work, problem ?? 'unreadable-date', name, { reason: 'birth-date', codes });
  return undefined;
}

function genderOf(work: Work): Subject['gender'] | undefined {
  const { gender } = work.plan.mapping.exam.subject;
  const text = work.fields.text(gender?.from);
  if (gender === undefined || text === undefined) return undefined;
  const found = wordMap(gender.words, work.plan.mapping.ignoreCase ?? false).get(text);
  if (found === undefined) {
    keepAsText(work, 'unknown-word', gender.from, { reason: 'gender' });
  }
  return found;
}

export function examinerOf(work: Work): Examiner | undefined {
  const { examiner } = work.plan.mapping.exam;
  const identifier = examiner.identifier && identifierOf(examiner.identifier, work);
  const name = work.fields.text(examiner.name);
  const role = examiner.role === undefined ? {} : { role: examiner.role };
  if (identifier !== undefined || name !== undefined) {
    return {
      key: 'examiner',
      ...(identifier !== undefined && { identifiers: [identifier] }),
      ...(name !== undefined && { name: { text: name } }),
      ...role,
    };
  }
  const { fixed } = examiner;
  if (fixed?.reference !== undefined)
    return { key: 'examiner', reference: fixed.reference, ...role };
  if (fixed?.name !== undefined) return { key: 'examiner', name: { text: fixed.name }, ...role };
  const from = examiner.name ?? examiner.identifier?.from ?? '';
  refuse(work, 'missing-field', from, { reason: 'examiner' });
  return undefined;
}
