import type {
  Coding,
  Questionnaire,
  QuestionnaireItem,
  QuestionnaireResponse,
  QuestionnaireResponseItem,
  QuestionnaireResponseItemAnswer,
  ValueSet,
} from 'fhir/r4.js';
import type { ExamStart } from '../../src/index.ts';
import type { Random } from '../../src/testing/random.ts';

/** Who fills in the forms of the tests, and when. */
export const head: Omit<ExamStart, 'protocol'> = {
  id: 'quay-2025-31',
  subject: { reference: 'Patient/417' },
  examiners: [{ key: 'nurse', role: 'harbour nurse' }],
  performed: { start: '2025-05-06T09:00:00+02:00' },
  recorded: '2025-05-06T09:20:00+02:00',
};

/** Each item of a form with what is below it. */
export function* itemsOf(items: readonly QuestionnaireItem[] = []): Generator<QuestionnaireItem> {
  for (const item of items) {
    yield item;
    yield* itemsOf(item.item);
  }
}

/** The answers that an item offers, in itself or in a value set that its form contains. */
export function offeredBy(
  { contained = [] }: Questionnaire,
  { answerOption = [], answerValueSet }: QuestionnaireItem,
): Coding[] {
  if (answerValueSet === undefined) return answerOption.flatMap((one) => one.valueCoding ?? []);
  const set = contained.find(
    (one): one is ValueSet => one.resourceType === 'ValueSet' && `#${one.id}` === answerValueSet,
  );
  if (set === undefined) throw new Error(`no value set ${answerValueSet}`);
  return (set.expansion?.contains ?? []).map(({ system = '', code = '', display = '' }) => ({
    system,
    code,
    display,
  }));
}

/** One answer as it was given: of a repetition, with its number. */
export interface GivenAnswer {
  readonly linkId: string;
  readonly round: string;
  readonly answers: readonly QuestionnaireResponseItemAnswer[];
}

export interface FilledForm {
  readonly response: QuestionnaireResponse;
  readonly given: readonly GivenAnswer[];
}

/**
 * Fills a form in as a renderer would: by what the Questionnaire says alone, its conditions worked out
 * as FHIR has them, some questions left open that need no answer.
 * @see https://hl7.org/fhir/R4/questionnaire-definitions.html#Questionnaire.item.enableWhen
 */
export function fillAtRandom(form: Questionnaire, random: Random): FilledForm {
  const given: GivenAnswer[] = [];
  const answered = new Map<string, readonly QuestionnaireResponseItemAnswer[]>();
  const isAsked = ({ enableWhen }: QuestionnaireItem): boolean =>
    enableWhen === undefined ||
    enableWhen.some(({ question, operator, answerCoding }) =>
      (answered.get(question) ?? []).some(
        ({ valueCoding }) =>
          operator === 'exists' ||
          (valueCoding?.system === answerCoding?.system &&
            valueCoding?.code === answerCoding?.code),
      ),
    );
  const fill = (
    items: readonly QuestionnaireItem[] = [],
    round = '',
  ): QuestionnaireResponseItem[] =>
    items.flatMap((item) => {
      if (!isAsked(item)) return [];
      return item.type === 'group' ? fillGroup(item, round) : answer(item, round);
    });
  const fillGroup = (
    { linkId, text, item, repeats }: QuestionnaireItem,
    round: string,
  ): QuestionnaireResponseItem[] => {
    if (repeats) {
      const rounds = Array.from({ length: random.int(0, 2) }, (_, at) => `${linkId}/${at}`);
      return rounds.flatMap((one) => {
        for (const inner of item ?? []) answered.delete(inner.linkId);
        const filled = fill(item, one);
        return filled.length === 0 ? [] : [{ linkId, text, item: filled }];
      });
    }
    const inner = fill(item, round);
    return inner.length === 0 ? [] : [{ linkId, text, item: inner }];
  };
  const answer = (item: QuestionnaireItem, round: string): QuestionnaireResponseItem[] => {
    const { linkId, text, required, initial } = item;
    if (!required && initial === undefined && random.chance(0.4)) return [];
    const answers = answersTo(form, item, random, round);
    answered.set(linkId, answers);
    given.push({ linkId, round, answers });
    return [{ linkId, text, answer: answers }];
  };
  const item = fill(form.item);
  return {
    response: {
      resourceType: 'QuestionnaireResponse',
      questionnaire: `${form.url}|${form.version}`,
      status: 'completed',
      subject: { reference: 'Patient/417' },
      authored: '2025-05-06T09:20:00+02:00',
      item,
    },
    given,
  };
}

function answersTo(
  form: Questionnaire,
  item: QuestionnaireItem,
  random: Random,
  round: string,
): QuestionnaireResponseItemAnswer[] {
  const { type, repeats, initial, linkId } = item;
  if (initial !== undefined) return initial.map(({ valueString = '' }) => ({ valueString }));
  const codings = offeredBy(form, item);
  if (codings.length > 0) {
    // A second round names another sign: the same one twice could deny itself.
    const half = codings.filter((_, at) => at % 2 === (round.endsWith('/1') ? 1 : 0));
    const open = round === '' ? codings : half.length > 0 ? half : codings;
    const picked = repeats ? random.some(open, random.int(1, 3)) : [random.pick(open)];
    return picked.map((valueCoding) => ({ valueCoding }));
  }
  if (type === 'decimal' || type === 'integer') {
    const low = boundOf(item, 'minValue');
    const high = boundOf(item, 'maxValue');
    if (type === 'integer') return [{ valueInteger: random.int(low, Math.min(high, 50)) }];
    return [{ valueDecimal: random.int(low * 10, high * 10) / 10 }];
  }
  return [{ valueString: `Words on ${linkId} ${random.int(1, 99)}` }];
}

function boundOf({ extension = [] }: QuestionnaireItem, name: string): number {
  const found = extension.find(({ url }) => url.endsWith(`/${name}`));
  return found?.valueDecimal ?? found?.valueInteger ?? Number.NaN;
}
