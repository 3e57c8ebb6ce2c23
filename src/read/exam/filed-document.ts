import { isSame } from '../../data/plain-data.ts';
import { documentCategory, documentType } from '../../fhir/filing.ts';
import { partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { compositionStatus } from '../../fhir/record-status.ts';
import {
  claimEqual,
  type Element,
  innerOf,
  innersOf,
  lookAt,
  lookAtList,
  peek,
} from '../bundle/element.ts';
import { claimFrame, type Entry } from '../bundle/entries.ts';
import { claimReference, claimReferences, targetName, targetOf } from '../bundle/reference.ts';
import { type ExamReading, otherIdentifiers } from '../reading.ts';

/** Claims of the document filed for people what follows from the exam and its report. */
export function claimFiled(
  reading: ExamReading,
  parts: ReadonlyMap<string, Entry>,
  report: Entry,
): void {
  const entry = parts.get(partName.filed);
  if (entry?.type !== 'DocumentReference') return;
  const { resource } = entry;
  const { people, filing, status, recorded } = reading;
  const title = reading.catalogue.items.get('exam')?.display ?? '';
  claimFrame(reading, entry, resourceName.filed);
  otherIdentifiers(reading, resource, partName.filed);
  claimEqual(resource, 'status', status === 'entered-in-error' ? status : 'current');
  if (status !== undefined) claimEqual(resource, 'docStatus', compositionStatus[status]);
  claimEqual(resource, 'type', documentType(filing, title));
  claimEqual(resource, 'category', [documentCategory(filing)]);
  claimEqual(resource, 'description', title);
  claimEqual(resource, 'date', recorded);
  const labels = filing.security?.map((label) => ({ coding: [label] }));
  claimEqual(resource, 'securityLabel', labels);
  claimOne(reading, entry, 'subject', people.isSubject);
  claimOne(reading, entry, 'custodian', people.isOrganization);
  claimReferences(reading, resource, 'author', (one) => people.examinerOf(one, entry));
  claimContent(resource, report.resource);
  claimContext(reading, entry, report);
}

function claimOne(
  reading: ExamReading,
  entry: Entry,
  name: string,
  is: (reference: Element, from: Entry) => boolean,
): void {
  const reference = lookAt(entry.resource, name);
  if (reference && is(reference, entry)) claimReference(reading, entry.resource, name);
}

/** The forms of the report, and no others. */
function claimContent(resource: Element, report: Element): void {
  const forms = lookAtList(report, 'presentedForm').map(({ json }) => json);
  for (const content of innersOf(resource, 'content')) {
    const attachment = lookAt(content, 'attachment');
    const same = attachment && forms.some((form) => isSame(form, attachment.json));
    if (same) content.claims.claimAll(content.json, 'attachment');
  }
}

/** Visit, time and report: below `context` in R4, beside each other in R5. */
function claimContext(reading: ExamReading, entry: Entry, report: Entry): void {
  const { resource } = entry;
  const { people, performed } = reading;
  const isReport = (one: Element): true | undefined => {
    const target = targetOf(reading, one, entry);
    return (target && targetName(target) === targetName(report)) || undefined;
  };
  const isVisit = (one: Element): true | undefined => people.isEncounter(one, entry) || undefined;
  if (Array.isArray(peek(resource, 'context'))) {
    claimReferences(reading, resource, 'context', isVisit);
  }
  const context = innerOf(resource, 'context');
  if (context !== undefined) {
    claimReferences(reading, context, 'encounter', isVisit);
    claimReferences(reading, context, 'related', isReport);
    claimEqual(context, 'period', performed);
  }
  claimEqual(resource, 'period', performed);
  for (const event of innersOf(resource, 'event')) {
    const reference = lookAt(event, 'reference');
    if (reference && isReport(reference)) claimReference(reading, event, 'reference');
  }
}
