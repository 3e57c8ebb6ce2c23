import type { Observation } from 'fhir/r4.js';
import type { Filing } from '../fhir/filing.ts';
import type { IdentitySystems } from '../fhir/names/part-names.ts';
import { partIdentifier } from '../fhir/names/part-names.ts';
import type { ExamSignature } from '../fhir/signature.ts';
import type { Issue } from '../issues/issue.ts';
import type { Exam, ExamTime } from '../model/exam.ts';
import type { Key } from '../model/primitive.ts';
import type { RecordStatus } from '../model/record-event.ts';
import { claimEqual, type Element, innersOf, peek } from './bundle/element.ts';
import type { Entries, Entry } from './bundle/entries.ts';
import type { Codes } from './observation/concept.ts';

/** What the reading of a bundle works with, once it is known which exam is read. */
export interface Reading extends Codes {
  readonly filing: Filing;
  /** Canonical base of our own profiles. */
  readonly base: string;
  /** Id of the exam. */
  readonly id: Key;
  /** Id that an export gives to a resource of the exam, by its stable name. */
  readonly idOf: (name: string) => string;
  readonly systems: Required<IdentitySystems>;
  readonly entries: Entries;
  readonly issues: Issue[];
  /** References to people and places as the report writes them, by their literal. */
  readonly knownReferences: Map<string, Readonly<Record<string, unknown>>[]>;
  /** Signatures of its steps, as they are found. */
  readonly signatures: ExamSignature[];
  /** Why a part was not read, by the JSON object that holds it. */
  readonly reasons: Map<object, string>;
}

/** The same, once the head of the exam and its people are read. */
export interface ExamReading extends Reading {
  readonly status: RecordStatus | undefined;
  readonly performed: ExamTime | undefined;
  readonly recorded: string | undefined;
  readonly people: People;
  /** Status that an observation of the exam has, by the name of its part. */
  readonly statusOf: (name: string) => Observation['status'];
  /** Key of the statement that a reference in `from` leads to. */
  readonly statementOf: (reference: Element, from: Entry) => Key | undefined;
  /** Key of the instrument that a reference in `from` leads to. */
  readonly instrumentOf: (reference: Element, from: Entry) => Key | undefined;
}

/** The people and places of the exam, and which of them a reference in `from` leads to. */
export interface People extends Pick<Exam, 'organization' | 'encounter'> {
  readonly subject: Exam['subject'] | undefined;
  readonly examiners: Exam['examiners'][number][];
  readonly examinerOf: (reference: Element, from: Entry) => Key | undefined;
  readonly isSubject: (reference: Element, from: Entry) => boolean;
  readonly isOrganization: (reference: Element, from: Entry) => boolean;
  readonly isEncounter: (reference: Element, from: Entry) => boolean;
}

/** Name of the part of an exam that a resource is: the key of a statement, or `group|skin`. */
export function partNameOf({ systems, id }: Reading, resource: Element): string | undefined {
  const list = peek(resource, 'identifier');
  if (!Array.isArray(list)) return undefined;
  for (const entry of list) {
    const { system, value } = (entry ?? {}) as Record<string, unknown>; // read as unknown alone
    if (system !== systems.statement || typeof value !== 'string') continue;
    if (value.startsWith(`${id}|`)) return value.slice(id.length + 1);
  }
  return undefined;
}

/** Name of the part that a reference itself names, for what is not in the bundle. */
export function partNamedBy(reading: Reading, reference: Element): string | undefined {
  const json = { identifier: [peek(reference, 'identifier')] };
  return partNameOf(reading, { ...reference, json });
}

/** Claims the identifier that names a part, and returns the other ones. */
export function otherIdentifiers(
  { systems, id }: Reading,
  resource: Element,
  name: string | undefined,
): Element[] {
  const { system, value } = partIdentifier(systems.statement, id, name ?? '');
  return innersOf(resource, 'identifier').filter((identifier) => {
    if (name === undefined) return true;
    if (peek(identifier, 'system') !== system || peek(identifier, 'value') !== value) return true;
    claimEqual(identifier, 'system', system);
    claimEqual(identifier, 'value', value);
    return false;
  });
}
