import type { Identifier as FhirIdentifier } from 'fhir/r4.js';
import { v5 } from 'uuid';
import type { Encounter, Examiner, Instrument, Organization, Subject } from '../../model/people.ts';
import type { Identity } from './ids.ts';

/**
 * The identity of whoever or whatever the exam describes: its first identifier, or the record that
 * the receiver holds of it. Undefined where only the exam tells it apart.
 */
export function identityOf(
  stated: Subject | Examiner | Organization | Encounter | undefined,
  examSystem: string,
): Identity | undefined {
  if (stated?.reference !== undefined) return recordIdentity(stated.reference, examSystem);
  const first = stated?.identifiers?.[0];
  return first && [first.system, first.value];
}

/** Every server has a `Patient/417`: a reference without server is one of the clinic's own. */
export function recordIdentity(reference: string, examSystem: string): Identity {
  return /^https?:/.test(reference)
    ? ['reference', reference]
    : [examSystem, 'reference', reference];
}

/** A workplace without identifier is told apart by its name among those of the clinic. */
export function organizationIdentity(
  stated: Organization | undefined,
  examSystem: string,
): Identity | undefined {
  const identity = identityOf(stated, examSystem);
  if (identity !== undefined || stated?.name === undefined) return identity;
  return [examSystem, stated.name];
}

/** The role of a known person at a workplace; undefined where person or workplace is told apart by the exam alone. */
export function roleIdentity(
  examiner: Examiner,
  organization: Organization | undefined,
  examSystem: string,
): Identity | undefined {
  const person = identityOf(examiner, examSystem);
  if (person === undefined || examiner.role === undefined) return undefined;
  if (organization === undefined) return [...person, examiner.role];
  const place = organizationIdentity(organization, examSystem);
  return place && [...person, examiner.role, ...place];
}

/** One instrument by its serial number, or else the type of instrument as the clinic uses it. */
export function instrumentIdentity({ type, serial }: Instrument, examSystem: string): Identity {
  return serial === undefined ? [examSystem, type] : [examSystem, type, serial];
}

/**
 * The identifier of a resource that has none but its identity. Not the id itself: a server that gives
 * ids replaces that wherever it meets it.
 * @see https://www.rfc-editor.org/rfc/rfc9562#section-4
 */
export function identityIdentifier(id: string): FhirIdentifier {
  return { system: 'urn:ietf:rfc:3986', value: `urn:uuid:${v5('identifier', id)}` };
}
