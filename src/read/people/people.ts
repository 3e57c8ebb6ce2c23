import { identityOf, organizationIdentity, roleIdentity } from '../../fhir/names/identity.ts';
import { sharedId } from '../../fhir/names/ids.ts';
import { partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import type { Examiner, Organization, Subject } from '../../model/people.ts';
import type { Key } from '../../model/primitive.ts';
import {
  claimEqual,
  dateOf,
  type Element,
  innersOf,
  lookAt,
  lookAtList,
  peek,
  textOf,
  wordOf,
} from '../bundle/element.ts';
import { claimFrame, type Entry } from '../bundle/entries.ts';
import { claimReference, type Target, targetName, targetOf } from '../bundle/reference.ts';
import { filled, identifierList, identifiersOf } from '../observation/values.ts';
import {
  otherIdentifiers,
  type People,
  partNamedBy,
  partNameOf,
  type Reading,
} from '../reading.ts';
import { described } from './described.ts';
import { type Party, partyOf, type ReferencePlace, referenceOf, statedBy } from './party.ts';
import { claimIdentifier, claimShared, describedRecord } from './shared.ts';
import { encounterOf } from './visit.ts';

/**
 * Everyone whom the report (or, without one, an observation) names: from the resources that it leads
 * to, or from its references alone.
 */
export function readPeople(reading: Reading, report: Entry | undefined): People {
  if (report === undefined) return nobody;
  const { resource } = report;
  const place = (name: string, type: string): ReferencePlace => ({
    holder: resource,
    name,
    types: [type],
  });
  const subject = partyOf(reading, report, place('subject', 'Patient'));
  const visit = partyOf(reading, report, place('encounter', 'Encounter'));
  const performers = readPerformers(reading, report);
  const leadsTo =
    (party: Party | undefined) =>
    (reference: Element, from: Entry): boolean => {
      const target = targetOf(reading, reference, from);
      return target !== undefined && party?.name === targetName(target);
    };
  const isOrganization = leadsTo(performers.workplace);
  const isSubject = leadsTo(subject);
  const organization = performers.workplace && organizationOf(reading, performers.workplace);
  claimRoles(reading, performers, organization);
  return {
    subject: subject && subjectOf(reading, subject),
    examiners: performers.examiners,
    ...(organization && { organization }),
    ...(visit && {
      encounter: encounterOf(reading, visit, (holder, name, is) => {
        const inner = lookAt(holder, name);
        const from = visit.entry;
        const fits = is === 'subject' ? isSubject : isOrganization;
        if (inner && from && fits(inner, from)) claimReference(reading, holder, name);
      }),
    }),
    examinerOf: (reference, from) => {
      const target = targetOf(reading, reference, from);
      if (target === undefined) return undefined;
      const key = keyOf(reading, reference, target);
      return performers.examiners.some((known) => known.key === key)
        ? key
        : performers.keys.get(targetName(target));
    },
    isSubject,
    isOrganization,
    isEncounter: leadsTo(visit),
  };
}

const nobody: People = {
  subject: undefined,
  examiners: [],
  examinerOf: () => undefined,
  isSubject: () => false,
  isOrganization: () => false,
  isEncounter: () => false,
};

const clinicians = ['Practitioner', 'PractitionerRole'];

function subjectOf(reading: Reading, party: Party): Subject {
  const { entry, reference } = party;
  if (entry === undefined) {
    const text = textOf(reference, 'display');
    return { ...statedBy(party), ...(text !== undefined && { name: { text } }) };
  }
  claimFrame(reading, entry, resourceName.patient);
  const { resource } = entry;
  const gender = wordOf(resource, 'gender', ['male', 'female', 'other', 'unknown'] as const);
  const birthDate = dateOf(resource, 'birthDate');
  const subject = {
    ...describedRecord(reading, entry, 'Patient'),
    ...described(resource, identifierList(resource)),
    ...(birthDate !== undefined && { birthDate }),
    ...(gender !== undefined && { gender }),
  };
  claimShared(entry, 'Patient', identityOf(subject, reading.systems.exam));
  return subject;
}

interface Performers {
  readonly examiners: Examiner[];
  readonly workplace: Party | undefined;
  readonly keys: ReadonlyMap<string, Key>;
}

function readPerformers(reading: Reading, report: Entry): Performers {
  const examiners: Examiner[] = [];
  const keys = new Map<string, Key>();
  let workplace: Party | undefined;
  const place = { holder: report.resource, name: 'performer' };
  lookAtList(report.resource, 'performer').forEach((reference, at) => {
    const target = targetOf(reading, reference, report);
    if (target === undefined) return;
    const key = keyOf(reading, reference, target);
    if (key === undefined && isOrganization(target, reference)) {
      workplace ??= partyOf(reading, report, { ...place, at, types: ['Organization'] });
      return;
    }
    if (key === undefined && !isClinician(target)) return;
    const party = partyOf(reading, report, { ...place, at, types: clinicians });
    if (party === undefined) return;
    const own = key ?? `examiner-${examiners.length + 1}`;
    keys.set(party.name, own);
    examiners.push(examinerOf(reading, party, { key: own, named: key !== undefined }));
  });
  return { examiners, workplace, keys };
}

/** A role says where it is held, and has its identity from there: to be claimed once the place is known. */
function claimRoles(
  reading: Reading,
  { examiners, workplace, keys }: Performers,
  organization: Organization | undefined,
): void {
  for (const role of reading.entries.ofType('PractitionerRole')) {
    const key = keys.get(targetName(role));
    const examiner = examiners.find((one) => one.key === key);
    if (examiner === undefined) continue;
    const place = lookAt(role.resource, 'organization');
    const target = place && targetOf(reading, place, role);
    if (target !== undefined && targetName(target) === workplace?.name) {
      claimReference(reading, role.resource, 'organization');
    }
    const identity = roleIdentity(examiner, organization, reading.systems.exam);
    claimShared(role, 'PractitionerRole', identity);
  }
}

/** The key under which the exam names an examiner: in the resource, or in the reference to it. */
function keyOf(reading: Reading, reference: Element, target: Target): Key | undefined {
  const prefix = partName.examiner('');
  const byResource = typeof target === 'object' ? partNameOf(reading, target.resource) : undefined;
  if (byResource?.startsWith(prefix)) return byResource.slice(prefix.length);
  const byReference = partNamedBy(reading, reference);
  return byReference?.startsWith(prefix) ? byReference.slice(prefix.length) : undefined;
}

function isOrganization(target: Target, reference: Element): boolean {
  if (typeof target === 'object') return target.type === 'Organization';
  return peek(reference, 'type') === 'Organization' || !isClinician(target);
}

function isClinician(target: Target): boolean {
  if (typeof target === 'object') return clinicians.includes(target.type);
  return /(^|\/)Practitioner(Role)?\//.test(target);
}

function examinerOf(
  reading: Reading,
  party: Party,
  { key, named }: { readonly key: Key; readonly named: boolean },
): Examiner {
  const { entry, reference } = party;
  const name = named ? partName.examiner(key) : undefined;
  if (entry === undefined) {
    const text = textOf(reference, 'display');
    const keyed = named && claimKey(reading, reference, key);
    const { identifiers, ...stated } = keyed ? referenceOf(party) : statedBy(party);
    return {
      key,
      ...stated,
      ...(identifiers && { identifiers }),
      ...(text !== undefined && { name: { text } }),
    };
  }
  const isRole = entry.type === 'PractitionerRole';
  const own = isRole ? resourceName.role(key) : resourceName.practitioner(key);
  claimFrame(reading, entry, own);
  const { resource } = entry;
  // Whoever is known beyond the exam is named in the reference.
  if (named) claimKey(reading, reference, key);
  if (!isRole) return { key, ...practitionerOf(reading, entry, name) };
  otherIdentifiers(reading, resource, name);
  const [code] = innersOf(resource, 'code');
  const role = code && textOf(code, 'text');
  const person = partyOf(reading, entry, {
    holder: resource,
    name: 'practitioner',
    types: ['Practitioner'],
  });
  return {
    key,
    ...(person && personOf(reading, person, { key, name })),
    ...(role !== undefined && { role }),
  };
}

function personOf(
  reading: Reading,
  party: Party,
  { key, name }: { readonly key: Key; readonly name: string | undefined },
): Omit<Examiner, 'key'> {
  const { entry, reference } = party;
  if (entry === undefined) {
    const text = textOf(reference, 'display');
    return { ...statedBy(party), ...(text !== undefined && { name: { text } }) };
  }
  claimFrame(reading, entry, resourceName.practitioner(key));
  return practitionerOf(reading, entry, name);
}

function practitionerOf(
  reading: Reading,
  entry: Entry,
  name: string | undefined,
): Omit<Examiner, 'key'> {
  const person = {
    ...describedRecord(reading, entry, 'Practitioner'),
    ...described(entry.resource, otherIdentifiers(reading, entry.resource, name)),
  };
  claimShared(entry, 'Practitioner', identityOf(person, reading.systems.exam));
  return person;
}

/** Claims the identifier of a reference that says which examiner is meant. */
function claimKey({ systems, id }: Reading, reference: Element, key: Key): boolean {
  const value = `${id}|${partName.examiner(key)}`;
  return claimEqual(reference, 'identifier', { system: systems.statement, value });
}

function organizationOf(reading: Reading, party: Party): Organization {
  const { entry, reference } = party;
  if (entry === undefined) {
    const name = textOf(reference, 'display');
    return { ...statedBy(party), ...(name !== undefined && { name }) };
  }
  claimFrame(reading, entry, resourceName.organization);
  const { resource } = entry;
  const { exam } = reading.systems;
  claimEqual(resource, 'active', true);
  const name = textOf(resource, 'name');
  const named = {
    ...describedRecord(reading, entry, 'Organization'),
    ...(name !== undefined && { name }),
  };
  const byName = sharedId('Organization', organizationIdentity(named, exam) ?? []);
  const identifiers = filled(identifiersOf(claimIdentifier(resource, byName)));
  const organization = { ...named, ...(identifiers && { identifiers }) };
  claimShared(entry, 'Organization', organizationIdentity(organization, exam));
  return organization;
}
