import type { Attachment, DocumentReference, Reference } from 'fhir/r4.js';
import { base64, sha1Base64 } from '../../data/base64.ts';
import { documentCategory, documentType } from '../../fhir/filing.ts';
import { partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { compositionStatus } from '../../fhir/record-status.ts';
import type { Exam } from '../../model/exam.ts';
import type { ExportContext } from '../context.ts';
import { summary } from './narrative.ts';
import { organizationReference } from './people.ts';

/** The whole report in a form that people read: a page of HTML as text, a PDF as bytes. */
export interface PresentedForm {
  /** `text/html`, `application/pdf`. */
  readonly contentType: string;
  readonly content: string | Uint8Array;
  readonly title?: string;
  /** BCP 47. */
  readonly language?: string;
}

/** Makes the forms of an exam, such as `htmlForm()` of the entry `report`. */
export type FormMaker = (exam: Exam) => readonly PresentedForm[];

/** Each form with its length in bytes and its SHA-1, by which a receiver sees that it came over whole. */
export function presentedForms(exam: Exam, make: FormMaker | undefined): Attachment[] {
  return (make?.(exam) ?? []).map(({ contentType, content, title, language }) => {
    const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
    return {
      contentType,
      ...(language !== undefined && { language }),
      data: base64(bytes),
      size: bytes.length,
      hash: sha1Base64(bytes),
      ...(title !== undefined && { title }),
    };
  });
}

/**
 * The forms that people read as a document of the chart, for systems that file documents and show no
 * report. In R4 form; the version adapter turns it into R5's.
 * @see https://hl7.org/fhir/R4/documentreference.html
 */
export function filedDocument(context: ExportContext): DocumentReference {
  const { exam, coder, filing, presentedForms } = context;
  const custodian = organizationReference(context);
  const title = coder.display('items', 'exam');
  const { start, end } = exam.performed;
  const labels = filing.security ?? [];
  const report: Reference = context.reference(resourceName.report);
  return {
    resourceType: 'DocumentReference',
    id: context.id(resourceName.filed),
    ...summary(context, [title, exam.performed.start]),
    identifier: [context.statementIdentifier(partName.filed)],
    status: exam.status === 'entered-in-error' ? 'entered-in-error' : 'current',
    docStatus: compositionStatus[exam.status],
    type: documentType(filing, title),
    category: [documentCategory(filing)],
    subject: context.subject,
    date: exam.recorded,
    author: exam.examiners.map(({ key }) => context.performer(key)),
    ...(custodian && { custodian }),
    description: title,
    ...(labels.length > 0 && { securityLabel: labels.map((label) => ({ coding: [label] })) }),
    content: presentedForms.map((attachment) => ({ attachment })),
    context: {
      ...(context.encounter && { encounter: [context.encounter] }),
      period: { start, ...(end !== undefined && { end }) },
      related: [report],
    },
  };
}
