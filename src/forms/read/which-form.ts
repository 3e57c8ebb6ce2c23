import { isPlainObject } from '../../data/plain-data.ts';
import type { Subject } from '../../model/people.ts';
import { protocolItem, protocolText } from '../describe.ts';
import type { FormDescription } from '../form.ts';
import type { FilledItems } from './collect.ts';
import type { Reading } from './reading.ts';

type Members = Readonly<Record<string, unknown>>;

/**
 * Whether this form was filled in, in this version. The hidden item says so; without it the canonical
 * URL has to, with its version. Where both are there neither may say another.
 */
export function checkForm(
  reading: Reading,
  response: Members,
  filled: FilledItems,
  { form, canonical }: { readonly form: FormDescription; readonly canonical: string },
): void {
  const wanted = protocolText(form.protocol);
  const [told] = filled.get(protocolItem)?.[0]?.answers ?? [];
  const { questionnaire } = response;
  if (told !== undefined && !('text' in told && told.text === wanted)) {
    reading.report('unknown-protocol', [protocolItem], { reason: 'form', code: wanted });
  } else if (typeof questionnaire === 'string' && isVersionOf(questionnaire, canonical)) {
    if (questionnaire !== canonical) {
      reading.report('unknown-protocol', ['questionnaire'], { reason: 'form', code: canonical });
    }
  } else if (told === undefined) {
    reading.report('missing-property', [protocolItem], { reason: 'which-form', code: wanted });
  }
}

/** The same form in any version that is stated. */
function isVersionOf(questionnaire: string, canonical: string): boolean {
  const [url, version] = questionnaire.split('|');
  return version !== undefined && url === canonical.split('|')[0];
}

/** A form that was filled in for somebody else is nobody's record. */
export function checkSubject(reading: Reading, { subject }: Members, of: Subject): void {
  // The head is of the caller and can be of any form: one without subject is refused with the exam.
  const named: unknown = of;
  if (!isPlainObject(subject) || !isPlainObject(named)) return;
  const { reference, identifier } = subject;
  const isOther =
    (typeof reference === 'string' &&
      of.reference !== undefined &&
      !isSameReference(reference, of.reference)) ||
    (isPlainObject(identifier) && isOtherNumber(identifier, of));
  if (isOther) reading.report('other-patient', ['subject'], { reason: 'form' });
}

/** Of an absolute and a relative reference the type and id alone can be compared. */
function isSameReference(one: string, other: string): boolean {
  const isAbsolute = (reference: string): boolean => /^[a-z][a-z0-9+.-]*:/.test(reference);
  const [a, b] = [one, other].map((reference) => reference.replace(/\/_history\/.*$/, ''));
  if (a === undefined || b === undefined || isAbsolute(a) === isAbsolute(b)) return a === b;
  const [long, short] = isAbsolute(a) ? [a, b] : [b, a];
  return long.endsWith(`/${short}`);
}

function isOtherNumber({ system, value }: Members, { identifiers = [] }: Subject): boolean {
  const ofSystem = identifiers.filter((one) => one.system === system);
  return ofSystem.length > 0 && !ofSystem.some((one) => one.value === value);
}
