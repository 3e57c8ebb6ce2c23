import type { Examiner, Subject } from '../../model/people.ts';
import { issue } from '../issue.ts';
import type { IdentifierField } from '../mapping/exam-fields.ts';
import { wordMap } from '../mapping/word-map.ts';
import { inContext, namesOfText } from '../record/context.ts';
import type { Field, LegacyRecord } from '../record/record.ts';
import { looksDamaged } from '../values/damaged.ts';
import { type Found, textOf } from './head-fields.ts';
import { timeOf } from './times.ts';
import { holder, keepAsText, refuse, type Work } from './work.ts';

export function subjectOf(work: Work): Subject | undefined {
  const { subject } = work.plan.mapping.exam;
  const identifiers = (subject.identifiers ?? []).flatMap((field) =>
    field.oidFrom === undefined ? (identifierOf(field, work) ?? []) : everyIdentifier(field, work),
  );
  const [first, ...more] = identifiers;
  const number = work.fields.text(subject.reference?.from);
  const name = nameOf(work);
  if (first === undefined && number === undefined && name === undefined) {
    const [name] = namesOfText(subject.name);
    const from = subject.identifiers?.[0]?.from ?? subject.reference?.from ?? name ?? '';
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

/** Form of a UUID, which CDA takes for a name space as well. @see https://www.rfc-editor.org/rfc/rfc9562 */
const uuid = /^[\da-f]{8}(?:-[\da-f]{4}){3}-[\da-f]{12}$/i;

/** Each number under the name space that stands beside it; one without an OID stays in the ledger. */
function everyIdentifier(
  { from, oidFrom, system }: IdentifierField,
  work: Work,
): { system: string; value: string }[] {
  const found = work.fields.all(from).flatMap((number) => {
    const [oid, other] = work.fields.beside(oidFrom, number).map(textOf);
    if (oid === undefined || other !== undefined) return [];
    const value = textOf(number.field);
    if (/^[0-2](?:\.\d+)+$/.test(oid)) return [{ system: `${system}${oid}`, value }];
    return uuid.test(oid) ? [{ system: `urn:uuid:${oid.toLowerCase()}`, value }] : [];
  });
  return [...new Map(found.map((one) => [JSON.stringify(one), one])).values()];
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

/**
 * The name of the person, its parts from one repetition or element. Of several names of one record
 * the legal one is taken; where that does not tell, none is, and all stay in the ledger.
 */
function nameOf(work: Work): Subject['name'] | undefined {
  const { subject } = work.plan.mapping.exam;
  const text = work.fields.text(subject.name);
  const parts = namedParts(work);
  if (parts === undefined && text === undefined) return undefined;
  return { ...parts, ...(text !== undefined && { text }) };
}

function namedParts(work: Work): Subject['name'] | undefined {
  const { family, given } = work.plan.mapping.exam.subject;
  if (family === undefined && given === undefined) return undefined;
  const heads = work.fields.all(family);
  const all = heads.length === 0 ? givenAlone(work) : heads.map((head) => nameAt(head, work));
  const current = all.filter(({ isFormer }) => !isFormer);
  const names = current.length === 0 ? all : current;
  const legal = names.filter(({ isLegal }) => isLegal);
  const [first, ...others] = differing(names);
  if (first === undefined) return undefined;
  if (others.length === 0) return first.name;
  const isOneRecord = others.every(({ record }) => record === first.record);
  const [only, second] = differing(legal);
  if (isOneRecord && only !== undefined && second === undefined) return only.name;
  const at = family ?? namesOfText(given)[0] ?? '';
  work.issues.push(
    issue(
      'conflicting-fields',
      [at],
      { reason: isOneRecord ? 'names' : 'head' },
      { severity: isOneRecord ? 'warning' : 'error', source: work.fields.first(at)?.at },
    ),
  );
  return undefined;
}

interface FoundName {
  readonly name: NonNullable<Subject['name']>;
  readonly record: LegacyRecord;
  readonly isLegal: boolean;
  /** A name of birth or an alias, beside which another can hold. */
  readonly isFormer: boolean;
}

function nameAt(head: Found, work: Work): FoundName {
  const { family, given } = work.plan.mapping.exam.subject;
  const [first, ...more] = namesOfText(given)
    .flatMap((name) => work.fields.beside(name, head))
    .map(textOf);
  const marks = head.record.fields.filter((field) => inContext(head.field, field));
  const isLegal = marks.some((field) => isLegalMark(field, family));
  const isFormer = marks.some((field) => isFormerMark(field, family));
  return {
    name: {
      family: textOf(head.field),
      ...(first !== undefined && { given: [first, ...more] }),
    },
    record: head.record,
    isLegal,
    isFormer,
  };
}

/** Name type L of table 0200 (XPN.7), or use L of CDA's EntityNameUse. */
function isLegalMark({ name, text }: Field, family: string | undefined): boolean {
  if (text.trim() !== 'L' || family === undefined) return false;
  return name === `${family}.7` || name === family.replace(/\/family$/, '/@use');
}

/**
 * Name types of table 0200 (XPN.7): alias, name at birth, maiden name, pseudonym; CDA's use P and the
 * qualifier BR of a part of the name (EntityNameUse, EntityNamePartQualifier).
 */
function isFormerMark({ name, text }: Field, family: string | undefined): boolean {
  if (family === undefined) return false;
  const mark = text.trim();
  if (name === `${family}.7`) return ['A', 'B', 'M', 'S'].includes(mark);
  const whole = family.replace(/\/family$/, '');
  if (name === `${whole}/@use`) return mark === 'P';
  return mark === 'BR' && [`${family}/@qualifier`, `${whole}/given/@qualifier`].includes(name);
}

function givenAlone(work: Work): FoundName[] {
  const { given } = work.plan.mapping.exam.subject;
  const all = namesOfText(given).flatMap((name) => work.fields.all(name));
  const [first, ...more] = all.map(({ field }) => textOf(field));
  const record = all[0]?.record;
  if (first === undefined || record === undefined) return [];
  return [{ name: { given: [first, ...more] }, record, isLegal: false, isFormer: false }];
}

function differing(names: readonly FoundName[]): FoundName[] {
  return [...new Map(names.map((one) => [JSON.stringify(one.name), one])).values()];
}

function birthDateOf(work: Work): string | undefined {
  const field = work.plan.mapping.exam.subject.birthDate;
  if (field === undefined) return undefined;
  const { value, problem, codes, name } = timeOf(field, work);
  if (value === undefined && problem === undefined) return undefined;
  // A time of birth says the day as well, at the place of birth, with or without its zone.
  const isDay = problem === undefined || problem === 'missing-zone';
  if (value !== undefined && isDay) return value.slice(0, 10);
  keepAsText(work, problem ?? 'unreadable-date', name, { reason: 'birth-date', codes });
  return undefined;
}

function genderOf(work: Work): Subject['gender'] | undefined {
  const { gender } = work.plan.mapping.exam.subject;
  const text = work.fields.text(gender?.from);
  if (gender === undefined || text === undefined) return undefined;
  const found = wordMap(gender.words, work.plan.mapping.ignoreCase ?? false).get(text);
  if (found === undefined) {
    keepAsText(work, 'unknown-word', holder(gender.from, work), { reason: 'gender' });
  }
  return found;
}

/** Who examined: one for each name or number that one record repeats. */
export function examinersOf(work: Work): readonly [Examiner, ...Examiner[]] | undefined {
  const { examiner } = work.plan.mapping.exam;
  const role = examiner.role === undefined ? {} : { role: examiner.role };
  const names = work.fields.texts(examiner.name);
  const texts = new Set(names.map(({ text }) => text));
  const isOneRecord = names.every(({ record }) => record === names[0]?.record);
  if (texts.size > 1 && isOneRecord) {
    const several = names.map((head, at): Examiner => {
      const [number] = work.fields.beside(examiner.identifier?.from, head);
      const system = examiner.identifier?.system;
      return {
        key: at === 0 ? 'examiner' : `examiner-${at + 1}`,
        ...(number !== undefined &&
          system !== undefined && { identifiers: [{ system, value: textOf(number) }] }),
        name: { text: head.text },
        ...role,
      };
    });
    const [first, ...more] = several;
    return first && [first, ...more];
  }
  const one = examinerOf(work);
  return one && [one];
}

function examinerOf(work: Work): Examiner | undefined {
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
  const from = namesOfText(examiner.name)[0] ?? examiner.identifier?.from ?? '';
  refuse(work, 'missing-field', from, { reason: 'examiner' });
  return undefined;
}
