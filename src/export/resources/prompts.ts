import type { CodeableConcept, DetectedIssue, Reference } from 'fhir/r4.js';
import { partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { issueStatus } from '../../fhir/record-status.ts';
import { escapeXhtml } from '../../fhir/xhtml.ts';
import type { Key } from '../../model/primitive.ts';
import type { PromptAnswer, ShownPrompt } from '../../model/prompts.ts';
import type { ItemCode } from '../../terminology/tables/code-types.ts';
import type { ExportContext } from '../context.ts';
import { summary } from './narrative.ts';

/**
 * Prompts as DetectedIssue: what they rest on is implicated, what was done is the mitigation. R4 form;
 * the version adapter turns it into R5's.
 * @see https://hl7.org/fhir/R4/detectedissue.html
 */
export function promptIssues(context: ExportContext): DetectedIssue[] {
  return (context.exam.prompts ?? []).map((prompt, at) => promptIssue(context, prompt, at));
}

function promptIssue(context: ExportContext, shown: ShownPrompt, at: number): DetectedIssue {
  const { coder, exam } = context;
  const { prompt, urgency, text, about, answer, ruleSet, version, source } = shown;
  const kind = coder.concept('values', `prompt.${urgency}`, prompt);
  return {
    resourceType: 'DetectedIssue',
    id: context.id(resourceName.prompt(at)),
    ...summary(context, [
      coder.display('values', `prompt.${urgency}`),
      text,
      answer && coder.display('values', `prompt-answer.${answer.answer}`),
      answer?.reason,
    ]),
    identifier: [context.statementIdentifier(partName.prompt(at))],
    status: issueStatus(exam.status),
    code: kind,
    severity: urgency === 'urgent' ? 'high' : 'moderate',
    patient: context.subject,
    identifiedDateTime: shown.shown,
    ...(about && { implicated: about.map((key) => statementReference(context, key)) }),
    evidence: [
      {
        code: [
          named(context, 'rule-set', ruleSet),
          named(context, 'rule-version', version),
          named(context, 'rule-source', source),
        ],
      },
    ],
    detail: text,
    ...(answer && { mitigation: [mitigation(context, answer)] }),
  };
}

function mitigation(
  context: ExportContext,
  { answer, by, at, reason }: PromptAnswer,
): NonNullable<DetectedIssue['mitigation']>[number] {
  return {
    action: context.coder.concept('values', `prompt-answer.${answer}`, reason),
    date: at,
    author: context.performer(by),
  };
}

function named({ coder }: ExportContext, item: ItemCode, text: string): CodeableConcept {
  return { coding: coder.codings('items', item), text };
}

/** A statement, by its identifier alone where a step has withdrawn it. */
export function statementReference(context: ExportContext, key: Key): Reference {
  return context.isStated(key)
    ? context.reference(resourceName.statement(key))
    : { identifier: context.statementIdentifier(key) };
}

/** The prompts for the text of a section, each with what was done. */
export function promptLines({ exam, coder }: ExportContext): string[] {
  return (exam.prompts ?? []).map(({ urgency, text, answer }) => {
    const done = answer && coder.display('values', `prompt-answer.${answer.answer}`);
    const parts = [coder.display('values', `prompt.${urgency}`), text, done, answer?.reason];
    return escapeXhtml(parts.filter((part) => part !== undefined).join('; '));
  });
}
