import type * as r4 from 'fhir/r4.js';
import type * as r4b from 'fhir/r4b.js';
import type * as r5 from 'fhir/r5.js';
import { CANONICAL_BASE } from '../fhir/names/systems.ts';
import { type FhirVersion, fhirVersions } from '../fhir/version.ts';
import { escapeXhtml, narrativeDiv } from '../fhir/xhtml.ts';
import { failure, issue, type Outcome, success } from '../issues/issue.ts';
import { answerLists } from './answer-lists.ts';
import { toFormDescription } from './describe.ts';
import type { Extractions } from './extract/extractions.ts';
import type { FormDescription } from './form.ts';
import type { FormOptions } from './options.ts';
import { questionnaireItems } from './questionnaire-items.ts';

/** A form as a resource. */
export interface QuestionnaireOptions extends FormOptions {
  /** Default `R4`. */
  readonly fhirVersion?: FhirVersion;
  /**
   * Canonical URL of the Questionnaire. Default: below `canonicalBase`, by protocol and language, since
   * each language is a form of its own.
   */
  readonly canonical?: string;
  /**
   * Each question holds its answers itself, for renderers that do not know value sets that the form
   * contains; a large form has three times the size then. Default false: a list that several questions
   * have stands in the form once.
   */
  readonly inlineAnswers?: boolean;
}

/** A Questionnaire of the version that was asked for. */
export type AnyQuestionnaire = r4.Questionnaire | r4b.Questionnaire | r5.Questionnaire;

/** The canonical URL that a form has where none is given. */
export function canonicalOf(
  { protocol, language }: FormDescription,
  { canonical, canonicalBase = CANONICAL_BASE }: QuestionnaireOptions,
): string {
  const name = language === 'en' ? protocol.id : `${protocol.id}-${language}`;
  return canonical ?? `${canonicalBase}/Questionnaire/${name}`;
}

/**
 * Makes the form of a protocol: a Questionnaire that any renderer of FHIR forms can show, with the
 * extensions of structured data capture that renderers know. No answer is chosen beforehand, all
 * answers stand in it, and it holds no data of a person.
 *
 * @param protocol Code of a protocol of the catalogue.
 * @param options Version, language, catalogue, canonical URL; see {@link QuestionnaireOptions}.
 * @returns The Questionnaire. It fails where there is no such protocol.
 * @example
 * const form = orThrow('make the form', toQuestionnaire('droopy-lid', { language: 'de' }));
 * @see https://hl7.org/fhir/R4/questionnaire.html
 */
export function toQuestionnaire(
  protocol: string,
  options?: QuestionnaireOptions & { readonly fhirVersion?: 'R4' },
): Outcome<r4.Questionnaire>;
export function toQuestionnaire(
  protocol: string,
  options: QuestionnaireOptions & { readonly fhirVersion: 'R4B' },
): Outcome<r4b.Questionnaire>;
export function toQuestionnaire(
  protocol: string,
  options: QuestionnaireOptions & { readonly fhirVersion: 'R5' },
): Outcome<r5.Questionnaire>;
export function toQuestionnaire(
  protocol: string,
  options?: QuestionnaireOptions,
): Outcome<AnyQuestionnaire>;
export function toQuestionnaire(
  protocol: string,
  options: QuestionnaireOptions = {},
): Outcome<AnyQuestionnaire> {
  return madeQuestionnaire(protocol, options);
}

/** What a form contains for engines, where that is asked for; given, since it needs the whole export. */
export type MakesExtractions = (
  form: FormDescription,
  options: QuestionnaireOptions,
  version: FhirVersion,
) => Extractions;

/** The form of {@link toQuestionnaire}, with templates where these are made. */
export function madeQuestionnaire(
  protocol: string,
  options: QuestionnaireOptions,
  makeExtractions?: MakesExtractions,
): Outcome<AnyQuestionnaire> {
  const { fhirVersion = 'R4' } = options;
  if (!fhirVersions.includes(fhirVersion)) {
    return failure([
      issue('unknown-code', ['fhirVersion'], { reason: 'option', codes: fhirVersions }),
    ]);
  }
  const described = toFormDescription(protocol, options);
  if (!described.ok) return described;
  const extractions = makeExtractions?.(described.value, options, fhirVersion);
  const made = questionnaireOf(described.value, options, fhirVersion, extractions);
  return success(made, described.issues);
}

function questionnaireOf(
  form: FormDescription,
  options: QuestionnaireOptions,
  version: FhirVersion,
  extractions?: Extractions,
): AnyQuestionnaire {
  const { protocol, language, title, items } = form;
  const url = canonicalOf(form, options);
  const lists = options.inlineAnswers ? undefined : answerLists(items);
  const made = questionnaireItems(items, { version, extracted: extractions?.at, lists });
  const contained = [...(lists?.contained ?? []), ...(extractions?.contained ?? [])];
  return {
    resourceType: 'Questionnaire',
    language,
    text: { status: 'generated', div: narrativeOf(form) },
    ...(contained.length > 0 && { contained }),
    url,
    version: protocol.version,
    name: nameOf(protocol.id),
    title,
    status: 'active',
    subjectType: ['Patient'],
    // The items differ between the versions in the name of one type alone.
    item: made as r4.QuestionnaireItem[],
  };
}

/** The title, and what has a page of its own. */
function narrativeOf({ title, items }: FormDescription): string {
  const pages = items.filter(({ page }) => page).map(({ text }) => `<li>${escapeXhtml(text)}</li>`);
  return narrativeDiv(`<p>${escapeXhtml(title)}</p><ul>${pages.join('')}</ul>`);
}

/** A name that programs can use: `droopy-lid` is DroopyLid; see cnl-0 and que-0. */
function nameOf(protocol: string): string {
  const words = protocol.split(/[^a-z0-9]+/).filter((word) => word !== '');
  const name = words.map((word) => word.slice(0, 1).toUpperCase() + word.slice(1)).join('');
  return /^[A-Z]/.test(name) ? name : `Form${name}`;
}
