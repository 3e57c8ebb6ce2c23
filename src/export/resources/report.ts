import type { DiagnosticReport, Observation } from 'fhir/r4.js';
import { reportCategory } from '../../fhir/filing.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { reportStatus } from '../../fhir/record-status.ts';
import { escapeXhtml } from '../../fhir/xhtml.ts';
import { pictureOf } from '../../kinds/registries/to-observation.ts';
import type { ExportContext } from '../context.ts';
import { generated } from './narrative.ts';
import { effective } from './observation.ts';
import { organizationReference } from './people.ts';

/** The exam as a report: its groups as results, the conclusion in the examiner's words. */
export function diagnosticReport(
  context: ExportContext,
  results: readonly Observation[],
): DiagnosticReport {
  const { exam, coder } = context;
  const codes = coder.fromCaller(exam.conclusion?.codings);
  const organization = organizationReference(context);
  const pictures = exam.statements.flatMap((statement) => pictureOf(context, statement) ?? []);
  const withdrawn = exam.status === 'entered-in-error';
  return {
    resourceType: 'DiagnosticReport',
    id: context.id(resourceName.report),
    ...context.profile('face-neck-report'),
    // Alone it has no other place to say what is left out.
    ...((context.narrative || context.detail === 'report') && {
      text: generated(reportText(context, results)),
    }),
    identifier: [context.examIdentifier],
    status: reportStatus(exam.status),
    category: [reportCategory(context.filing)],
    code: {
      coding: [...coder.codings('items', 'exam')].reverse(),
      text: coder.display('items', 'exam'),
    },
    subject: context.subject,
    ...(context.encounter && { encounter: context.encounter }),
    ...effective(context, undefined),
    issued: exam.recorded,
    performer: [
      ...exam.examiners.map(({ key }) => context.performer(key)),
      ...(organization ? [organization] : []),
    ],
    ...(results.length > 0 && {
      result: results.map((result) => ({ reference: `urn:uuid:${result.id}` })),
    }),
    ...(pictures.length > 0 && { media: pictures.map((link) => ({ link })) }),
    ...(exam.conclusion && {
      conclusion: withdrawn ? context.language.texts.withdrawn : exam.conclusion.text,
    }),
    ...(codes.length > 0 &&
      !withdrawn && { conclusionCode: codes.map((code) => ({ coding: [code] })) }),
    ...(context.presentedForms.length > 0 && { presentedForm: [...context.presentedForms] }),
  };
}

function reportText(context: ExportContext, results: readonly Observation[]): string {
  const { exam, coder } = context;
  const { texts } = context.language;
  if (exam.status === 'entered-in-error') return `<p>${escapeXhtml(texts.withdrawn)}</p>`;
  const conclusion = exam.conclusion?.text ?? texts.noConclusion;
  const parts = results.map((result) => `<li>${escapeXhtml(result.code.text ?? '')}</li>`);
  return (
    `<p><b>${escapeXhtml(coder.display('items', 'exam'))}</b></p>` +
    `<p>${escapeXhtml(conclusion)}</p>` +
    (parts.length > 0 ? `<p>${escapeXhtml(texts.partsTold)}</p><ul>${parts.join('')}</ul>` : '') +
    (context.detail === 'report' ? `<p>${escapeXhtml(texts.reportAlone)}</p>` : '') +
    (context.leftOut > 0 ? `<p>${escapeXhtml(texts.leftOut)} ${context.leftOut}</p>` : '') +
    `<p>${escapeXhtml(texts.notNamed)}</p>`
  );
}
