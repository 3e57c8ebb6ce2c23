import type * as r4 from 'fhir/r4.js';
import type * as r4b from 'fhir/r4b.js';
import type * as r5 from 'fhir/r5.js';
import type { Outcome } from '../../issues/issue.ts';
import {
  type AnyQuestionnaire,
  madeQuestionnaire,
  type QuestionnaireOptions,
} from '../to-questionnaire.ts';
import { extractionsOf } from './extractions.ts';

/**
 * Makes the same form as `toQuestionnaire`, which moreover contains the templates from which engines
 * for structured data capture extract Observations and a DiagnosticReport out of a response, as the
 * standard's template-based `$extract` has it. Reading a response needs none of it.
 *
 * @param protocol Code of a protocol of the catalogue.
 * @param options As for `toQuestionnaire`: version, language, catalogue, canonical URL.
 * @returns The Questionnaire. It fails where there is no such protocol.
 * @example
 * const form = orThrow('make the form', toExtractableQuestionnaire('droopy-lid'));
 * @see https://hl7.org/fhir/uv/sdc/extraction.html#template-based-extraction
 */
export function toExtractableQuestionnaire(
  protocol: string,
  options?: QuestionnaireOptions & { readonly fhirVersion?: 'R4' },
): Outcome<r4.Questionnaire>;
export function toExtractableQuestionnaire(
  protocol: string,
  options: QuestionnaireOptions & { readonly fhirVersion: 'R4B' },
): Outcome<r4b.Questionnaire>;
export function toExtractableQuestionnaire(
  protocol: string,
  options: QuestionnaireOptions & { readonly fhirVersion: 'R5' },
): Outcome<r5.Questionnaire>;
export function toExtractableQuestionnaire(
  protocol: string,
  options?: QuestionnaireOptions,
): Outcome<AnyQuestionnaire>;
export function toExtractableQuestionnaire(
  protocol: string,
  options: QuestionnaireOptions = {},
): Outcome<AnyQuestionnaire> {
  return madeQuestionnaire(protocol, options, extractionsOf);
}
