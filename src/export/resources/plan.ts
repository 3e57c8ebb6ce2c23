import type { ServiceRequest } from 'fhir/r4.js';
import { partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { escapeXhtml } from '../../fhir/xhtml.ts';
import type { PlanItem } from '../../model/conclusion.ts';
import type { ExportContext } from '../context.ts';
import { generated } from './narrative.ts';

/**
 * A referral, investigation, treatment or review as a ServiceRequest with the intent `plan`: what
 * the examiner means to be done, not an order. Advice is an observation.
 * @see https://hl7.org/fhir/R4/servicerequest.html
 */
export function planRequest(context: ExportContext, item: PlanItem): ServiceRequest {
  const { coder, exam } = context;
  const kind = coder.concept('values', `plan.${item.kind}`);
  return {
    resourceType: 'ServiceRequest',
    id: context.id(resourceName.plan(item.key)),
    ...(context.narrative && {
      text: generated(
        `<p><b>${escapeXhtml(kind.text ?? '')}</b>: ${escapeXhtml(item.text)}</p>` +
          (item.to === undefined
            ? ''
            : `<p>${escapeXhtml(context.language.texts.to)}: ${escapeXhtml(item.to)}</p>`),
      ),
    }),
    identifier: [context.statementIdentifier(partName.plan(item.key))],
    status: exam.status === 'entered-in-error' ? 'entered-in-error' : 'active',
    intent: 'plan',
    category: [kind],
    ...(item.urgency !== undefined && { priority: item.urgency }),
    code: { text: item.text },
    subject: context.subject,
    ...(context.encounter && { encounter: context.encounter }),
    ...(item.due !== undefined && { occurrenceDateTime: item.due }),
    authoredOn: exam.recorded,
    requester: context.performer(exam.examiners[0].key),
    ...performerType(context, item),
    ...(item.reasons && {
      reasonReference: item.reasons.map((key) => context.reference(resourceName.statement(key))),
    }),
    ...(item.guideline !== undefined && { note: [{ text: item.guideline }] }),
  };
}

function performerType(
  { coder }: ExportContext,
  { service, to }: PlanItem,
): Partial<Pick<ServiceRequest, 'performerType'>> {
  if (service !== undefined) return { performerType: coder.concept('services', service, to) };
  return to === undefined ? {} : { performerType: { text: to } };
}
