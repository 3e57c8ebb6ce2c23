import { emptyReason } from '../../fhir/empty-section.ts';
import { partIdentifier, partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { compositionStatus } from '../../fhir/record-status.ts';
import type { Exam } from '../../model/exam.ts';
import { claimEqual, type Element, innerOf, innersOf, lookAt } from '../bundle/element.ts';
import { claimFrame, claimGeneratedText, type Entry } from '../bundle/entries.ts';
import { claimReference, claimReferences, targetName, targetOf } from '../bundle/reference.ts';
import { ownCode, ownTable } from '../observation/concept.ts';
import type { ExamReading } from '../reading.ts';
import { claimExamCode, type ReportHead } from './report.ts';

/** What a document repeats of the exam. */
export type DocumentedRecord = ReportHead & Pick<Exam, 'history'>;

/** Claims what the document of an exam repeats of it, once all its other parts are read. */
export function claimDocument(reading: ExamReading, exam: DocumentedRecord): void {
  const [entry] = reading.entries.ofType('Composition');
  if (entry === undefined) return;
  const { resource } = entry;
  const { people } = reading;
  const identifier = partIdentifier(reading.systems.exam, reading.id, partName.document);
  // A list in R5.
  if (
    !claimEqual(resource, 'identifier', identifier) &&
    !claimEqual(resource, 'identifier', [identifier])
  )
    return;
  claimFrame(reading, entry, resourceName.composition);
  claimExamCode(reading, innerOf(resource, 'type'));
  claimEqual(resource, 'title', reading.catalogue.items.get('exam')?.display);
  if (exam.status !== undefined) claimEqual(resource, 'status', compositionStatus[exam.status]);
  claimEqual(resource, 'date', exam.recorded);
  const named = claimNamed(reading, entry);
  named('subject', people.isSubject);
  named('encounter', people.isEncounter);
  named('custodian', people.isOrganization);
  claimReferences(reading, resource, 'author', (reference) => people.examinerOf(reference, entry));
  claimAttesters(reading, exam, entry);
  for (const section of innersOf(resource, 'section')) {
    claimSection(reading, entry, section);
  }
}

/** Claims a person or place of the document: one reference, or a list of one in R5. */
function claimNamed(
  reading: ExamReading,
  entry: Entry,
): (name: string, is: (reference: Element, from: Entry) => boolean) => void {
  const { resource } = entry;
  return (name, is) => {
    const reference = lookAt(resource, name);
    if (reference && is(reference, entry)) claimReference(reading, resource, name);
    claimReferences(reading, resource, name, (one) => is(one, entry) || undefined);
  };
}

const attestationModes = 'http://hl7.org/fhir/composition-attestation-mode';

/** Who signed, as the history of the exam has it. */
function claimAttesters(reading: ExamReading, exam: DocumentedRecord, entry: Entry): void {
  const signed = exam.history?.filter(({ action }) => action === 'sign') ?? [];
  innersOf(entry.resource, 'attester').forEach((attester, at) => {
    const event = signed[at];
    const party = lookAt(attester, 'party');
    if (event === undefined || party === undefined) return;
    const by = reading.people.examinerOf(party, entry);
    if (by === event.by) claimReference(reading, attester, 'party');
    claimEqual(attester, 'time', event.at);
    claimEqual(attester, 'mode', 'professional');
    claimEqual(attester, 'mode', { coding: [{ system: attestationModes, code: 'professional' }] });
  });
}

/** Some of it has been read as a part of the exam. */
function isPart({ resource: { claims, json } }: Entry): boolean {
  return claims.claimOf(json, 'resourceType') !== undefined;
}

function claimSection(reading: ExamReading, entry: Entry, section: Element): void {
  const concept = lookAt(section, 'code');
  const own = concept && ownTable(reading, concept, ['sections', 'items']);
  if (own === undefined) return;
  ownCode(reading, innerOf(section, 'code'), own.table);
  claimEqual(section, 'title', reading.catalogue[own.table].get(own.code)?.display);
  claimGeneratedText(section);
  claimEqual(section, 'emptyReason', emptyReason(reading.language.texts));
  claimReferences(reading, section, 'entry', (reference) => {
    const target = targetOf(reading, reference, entry);
    if (target === undefined) return undefined;
    const part = typeof target === 'object' && isPart(target);
    return part || reading.instrumentOf(reference, entry) !== undefined
      ? targetName(target)
      : undefined;
  });
}
