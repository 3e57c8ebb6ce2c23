import type { Extension, QuestionnaireItem, QuestionnaireItemAnswerOption } from 'fhir/r4.js';
import { UCUM } from '../fhir/names/systems.ts';
import type { FhirVersion } from '../fhir/version.ts';
import type { AnswerLists } from './answer-lists.ts';
import { extracting } from './extract/annotation.ts';
import type { FormItem, FormOption } from './form.ts';

const extensions = 'http://hl7.org/fhir/StructureDefinition';

/** The unit of a figure that is asked for. */
export const UNIT_EXTENSION = `${extensions}/questionnaire-unit`;

/** @see https://hl7.org/fhir/R4/codesystem-questionnaire-item-control.html */
const ITEM_CONTROL = 'http://hl7.org/fhir/questionnaire-item-control';

/** Answers up to which they are shown beside each other with a button each. */
const fewAnswers = 6;

type AnyItem = Omit<QuestionnaireItem, 'type' | 'item'> & {
  readonly type: string;
  readonly item?: readonly AnyItem[];
};

/** The template by linkId of the item that it is extracted at. */
type Extracted = ReadonlyMap<string, string>;

interface Making {
  readonly version: FhirVersion;
  readonly answers: Answers;
  readonly extracted: Extracted;
  readonly referenceOf: AnswerLists['referenceOf'];
}

/** With what the items are made. */
interface Made {
  readonly version: FhirVersion;
  readonly extracted?: Extracted | undefined;
  /** Lists that the form contains; without them each item has its answers itself. */
  readonly lists?: AnswerLists | undefined;
}

/** The items of a form as those of a Questionnaire. */
export function questionnaireItems(
  items: readonly FormItem[],
  { version, extracted = new Map(), lists }: Made,
): readonly AnyItem[] {
  const referenceOf = lists?.referenceOf ?? (() => undefined);
  const making = { version, answers: answersOf(items), extracted, referenceOf };
  return items.map((item) => itemOf(item, making));
}

/** By linkId, the answers of a choice: other items can be asked by one. */
type Answers = ReadonlyMap<string, readonly FormOption[]>;

function answersOf(items: readonly FormItem[]): Answers {
  const known = new Map<string, readonly FormOption[]>();
  const look = (below: readonly FormItem[]): void => {
    for (const { linkId, options, items: inner } of below) {
      if (options !== undefined) known.set(linkId, options);
      if (inner !== undefined) look(inner);
    }
  };
  look(items);
  return known;
}

function itemOf(item: FormItem, making: Making): AnyItem {
  const { linkId, text, required, repeats, readOnly, items, options, value } = item;
  const { version, answers, extracted } = making;
  const template = extracted.get(linkId);
  const extension = [
    ...extensionsOf(item, version),
    ...(template === undefined ? [] : [extracting(template)]),
  ];
  return {
    ...(extension.length > 0 && { extension }),
    linkId,
    text,
    type: typeOf(item, version),
    ...enablingOf(item, answers),
    ...(required && { required }),
    ...(repeats && { repeats }),
    ...(readOnly && { readOnly }),
    ...(options && offered(options, making)),
    ...(value !== undefined && { initial: [{ valueString: value }] }),
    ...(items && { item: items.map((one) => itemOf(one, making)) }),
  };
}

/** @see https://hl7.org/fhir/R5/valueset-item-type.html `choice` is `coding` there */
function typeOf({ type }: FormItem, version: FhirVersion): string {
  return type === 'choice' && version === 'R5' ? 'coding' : type;
}

function enablingOf(
  { enabledBy }: FormItem,
  answers: Answers,
): Pick<QuestionnaireItem, 'enableWhen' | 'enableBehavior'> {
  if (enabledBy === undefined) return {};
  const { item: question, codes } = enabledBy;
  if (codes === undefined) {
    return { enableWhen: [{ question, operator: 'exists', answerBoolean: true }] };
  }
  const options = answers.get(question) ?? [];
  return {
    enableWhen: options.flatMap(({ system, code }) =>
      codes.includes(code)
        ? [{ question, operator: '=' as const, answerCoding: { system, code } }]
        : [],
    ),
    // que-12: with several conditions it must be said how they go together
    ...(codes.length > 1 && { enableBehavior: 'any' as const }),
  };
}

function offered(
  options: readonly FormOption[],
  { referenceOf }: Making,
): Pick<QuestionnaireItem, 'answerValueSet' | 'answerOption'> {
  const answerValueSet = referenceOf(options);
  return answerValueSet === undefined
    ? { answerOption: options.map(answerOption) }
    : { answerValueSet };
}

function answerOption({ system, code, display }: FormOption): QuestionnaireItemAnswerOption {
  return { valueCoding: { system, code, display } };
}

function extensionsOf(item: FormItem, version: FhirVersion): Extension[] {
  const { hidden, unit, minimum, maximum, type } = item;
  const bound = (value: number): Partial<Extension> =>
    type === 'integer' ? { valueInteger: value } : { valueDecimal: value };
  const control = controlOf(item, version);
  return [
    ...(hidden ? [{ url: `${extensions}/questionnaire-hidden`, valueBoolean: true }] : []),
    ...(control === undefined
      ? []
      : [
          {
            url: `${extensions}/questionnaire-itemControl`,
            valueCodeableConcept: { coding: [{ system: ITEM_CONTROL, code: control }] },
          },
        ]),
    ...(unit === undefined
      ? []
      : [
          {
            url: UNIT_EXTENSION,
            valueCoding: { system: UCUM, code: unit, display: unit },
          },
        ]),
    ...(minimum === undefined ? [] : [{ url: `${extensions}/minValue`, ...bound(minimum) }]),
    ...(maximum === undefined ? [] : [{ url: `${extensions}/maxValue`, ...bound(maximum) }]),
  ];
}

function controlOf(
  { type, options = [], repeats, page }: FormItem,
  version: FhirVersion,
): string | undefined {
  // The code system of R4 and R4B has no pages; there the groups at the top are what they are.
  if (page) return version === 'R5' ? 'page' : undefined;
  if (type !== 'choice') return undefined;
  if (repeats) return 'check-box';
  return options.length <= fewAnswers ? 'radio-button' : 'drop-down';
}
