import { isSame } from '../../data/plain-data.ts';
import { OBSERVATION_CATEGORY } from '../../fhir/names/systems.ts';
import { issue } from '../../issues/issue.ts';
import { lookAt, lookAtList, peek } from '../bundle/element.ts';
import type { Entry } from '../bundle/entries.ts';
import { ownTable } from '../observation/concept.ts';
import { type ExamReading, partNameOf } from '../reading.ts';

/** What the head of an observation says about how its content may be read. */
export interface Frame {
  /** It says nothing that may be kept as said. */
  readonly unsaid?: true;
  /** It was told by the patient or a relative, and not examined. */
  readonly told?: true;
  /** Why it may become a note and nothing more. */
  readonly doubt?: string;
}

/**
 * States in which an observation says nothing that may be kept as said.
 * @see https://hl7.org/fhir/R4/valueset-observation-status.html
 */
const unsaid: ReadonlySet<unknown> = new Set([
  'entered-in-error',
  'cancelled',
  'registered',
  'unknown',
]);
const said: ReadonlySet<unknown> = new Set(['final', 'amended', 'corrected', 'appended']);

/** Categories of what was asked and not examined. */
const toldCategories: ReadonlySet<unknown> = new Set(['survey', 'social-history', 'symptom']);

/** True, and told, where the status says that nothing was found out or that it was taken back. */
export function isUnsaid(reading: ExamReading, { resource, path }: Entry): boolean {
  if (!unsaid.has(peek(resource, 'status'))) return false;
  reading.reasons.set(resource.json, 'its status says that it was withdrawn or not made');
  tell(reading, [...path, 'status'], 'withdrawn or not made, and so left out', 'information');
  return true;
}

/** Status, focus, category and performer of an observation, with and without our codes. */
export function frameOf(reading: ExamReading, entry: Entry): Frame {
  const { resource, path } = entry;
  const status = peek(resource, 'status');
  const own = partNameOf(reading, resource);
  const expected =
    own !== undefined && (status === reading.statusOf(own) || wasTakenOver(reading, entry));
  if (!unsaid.has(status) && !said.has(status) && status !== 'preliminary') {
    reading.reasons.set(resource.json, 'its status is not known');
    tell(reading, [...path, 'status'], 'without a status that is known nothing is read', 'error');
    return { unsaid: true };
  }
  if (isAboutOthers(reading, entry)) {
    reading.reasons.set(resource.json, 'it is about someone or something else');
    tell(
      reading,
      [...path, 'focus'],
      'its focus is not the patient, and so nothing of it is read',
      'error',
    );
    return { unsaid: true };
  }
  const open = reading.status === undefined || /^(draft|preliminary)$/.test(reading.status);
  return {
    ...(wasTold(entry) && { told: true }),
    ...(status === 'preliminary' &&
      !open &&
      !expected && { doubt: 'it is preliminary and the exam is not' }),
  };
}

/** An observation of ours that was taken over from an earlier exam unseen is preliminary by itself. */
function wasTakenOver(reading: ExamReading, { resource }: Entry): boolean {
  return lookAtList(resource, 'component').some((component) => {
    const concept = lookAt(component, 'code');
    const own = concept && ownTable(reading, concept, ['items']);
    return own?.code === 'carried-confirmed' && peek(component, 'valueBoolean') === false;
  });
}

/** A focus may be the patient, or another observation of this exam. */
function isAboutOthers(reading: ExamReading, entry: Entry): boolean {
  const { resource } = entry;
  const focus = peek(resource, 'focus');
  if (focus === undefined) return false;
  const list = lookAtList(resource, 'focus');
  if (!Array.isArray(focus) || list.length < focus.length) return true;
  const own = partNameOf(reading, resource) !== undefined;
  return list.some((reference) => {
    if (reading.people.isSubject(reference, entry)) return false;
    if (reading.statementOf(reference, entry) !== undefined) return false;
    // A part of ours keeps its meaning where the finding that it measures was not sent with it.
    const literal = peek(reference, 'reference');
    return !(
      own &&
      typeof literal === 'string' &&
      /(^urn:uuid:|(^|\/)Observation\/)/.test(literal)
    );
  });
}

function wasTold({ resource }: Entry): boolean {
  const codes = lookAtList(resource, 'category').flatMap((concept) =>
    lookAtList(concept, 'coding').flatMap((coding) =>
      peek(coding, 'system') === OBSERVATION_CATEGORY ? [peek(coding, 'code')] : [],
    ),
  );
  if (codes.length > 0 && codes.every((code) => toldCategories.has(code))) return true;
  const performers = lookAtList(resource, 'performer').map((one) => peek(one, 'reference'));
  return (
    performers.length > 0 &&
    performers.every(
      (literal) =>
        typeof literal === 'string' && /(^|\/)(Patient|RelatedPerson)\/[^/]+$/.test(literal),
    )
  );
}

const clinicalStatus = 'http://terminology.hl7.org/CodeSystem/condition-clinical';
const verificationStatus = 'http://terminology.hl7.org/CodeSystem/condition-ver-status';
const conditionCategory = 'http://terminology.hl7.org/CodeSystem/condition-category';

/** The code of a concept in one system; undefined where there is none or more than one. */
function codeIn({ resource }: Entry, name: string, system: string): unknown {
  const concept = lookAt(resource, name);
  const codes = (concept ? lookAtList(concept, 'coding') : [])
    .filter((coding) => peek(coding, 'system') === system)
    .map((coding) => peek(coding, 'code'));
  return codes.length === 1 ? codes[0] : undefined;
}

export interface ConditionFrame extends Frame {
  readonly presence: 'present' | 'absent';
  readonly certainty?: 'suspected' | 'confirmed';
}

/**
 * What a Condition says of itself: only an active one that was seen in this visit can be a finding.
 * @see https://hl7.org/fhir/R4/condition.html#status
 */
export function conditionFrame(reading: ExamReading, entry: Entry): ConditionFrame {
  const { resource, path } = entry;
  const verified = codeIn(entry, 'verificationStatus', verificationStatus);
  const clinical = codeIn(entry, 'clinicalStatus', clinicalStatus);
  if (verified === 'entered-in-error') {
    reading.reasons.set(resource.json, 'it was entered in error');
    tell(reading, [...path, 'verificationStatus'], 'withdrawn, and so left out', 'information');
    return { presence: 'absent', unsaid: true };
  }
  const doubt = conditionDoubt(entry, { verified, clinical });
  const suspected = ['unconfirmed', 'provisional', 'differential'].includes(String(verified));
  return {
    presence: verified === 'refuted' ? 'absent' : 'present',
    ...(suspected && { certainty: 'suspected' }),
    ...(verified === 'confirmed' && { certainty: 'confirmed' }),
    ...(doubt !== undefined && { doubt }),
  };
}

function conditionDoubt(
  entry: Entry,
  { verified, clinical }: { readonly verified: unknown; readonly clinical: unknown },
): string | undefined {
  const { resource } = entry;
  if (peek(resource, 'verificationStatus') !== undefined && verified === undefined) {
    return 'its verification status is not understood';
  }
  // A refuted condition has no clinical status that matters (con-5 of R4 forbids one for errors only).
  if (verified === 'refuted') return undefined;
  if (!['active', 'recurrence', 'relapse'].includes(String(clinical))) {
    return 'it is not said to be active';
  }
  if (Object.keys(resource.json).some((name) => name.startsWith('abatement'))) {
    return 'it has abated';
  }
  const categories = lookAtList(resource, 'category').flatMap((one) => lookAtList(one, 'coding'));
  const listed = categories.some((coding) =>
    isSame(
      [peek(coding, 'system'), peek(coding, 'code')],
      [conditionCategory, 'problem-list-item'],
    ),
  );
  return listed ? 'it is an entry of a problem list and not of this examination' : undefined;
}

function tell(
  reading: ExamReading,
  path: Entry['path'],
  says: string,
  severity: 'error' | 'information',
): void {
  reading.issues.push(issue('not-understood', path, { reason: 'element', says }, { severity }));
}
