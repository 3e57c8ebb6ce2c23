import { resolve } from '../bundles/resolve.ts';
import { isObject, type JsonObject, listOf, objectsOf, textOf } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';
import { type Asked, askedBy, checkAnswer, itemRule } from './answer-values.ts';
import { type GivenAnswers, givenAnswers, isEnabled } from './enable-when.ts';
import { type FormItem, type FormItems, formItems } from './form.ts';

/** Where the answers of a response are looked at. */
interface Looking {
  readonly scope: Scope;
  readonly given: GivenAnswers;
  /** Only what is complete must have answers to all that is required. */
  readonly complete: boolean;
  readonly asked: Map<FormItem, Asked>;
}

const responses = 'https://hl7.org/fhir/R4/questionnaireresponse-definitions.html';
const structureRule = `${responses}#QuestionnaireResponse.questionnaire`;

type Below = readonly (string | number)[];

/**
 * Holds a QuestionnaireResponse to the form that it answers, which is contained in it or was given
 * with the profiles.
 * @see https://hl7.org/fhir/R4/questionnaireresponse-definitions.html#QuestionnaireResponse.questionnaire
 */
export function checkAnswers(response: JsonObject, scope: Scope): void {
  const canonical = textOf(response['questionnaire']);
  if (canonical === undefined) return;
  const form = formOf(canonical, scope);
  if (form === undefined) {
    const why = 'the form that is answered was not given for validation';
    scope.unchecked.push({ rule: canonical, path: [...scope.path, 'questionnaire'], why });
    const said = { severity: 'information', value: canonical } as const;
    report(scope, 'unchecked-rule', { reason: 'form' }, said, ['questionnaire']);
    return;
  }
  const looking: Looking = {
    scope,
    given: givenAnswers(response),
    complete: response['status'] === 'completed' || response['status'] === 'amended',
    asked: new Map(),
  };
  checkItems(response, formItems(form), looking, []);
}

function formOf(canonical: string, scope: Scope): JsonObject | undefined {
  if (canonical.startsWith('#')) {
    const inside = resolve(canonical, scope)?.resource;
    return inside?.['resourceType'] === 'Questionnaire' ? inside : undefined;
  }
  const [url = '', version] = canonical.split('|');
  const form = scope.forms?.get(url);
  return version === undefined || form?.['version'] === version ? form : undefined;
}

/** The items below a response, an item or an answer, by the items of the form at the same place. */
function checkItems(holder: JsonObject, forms: FormItems, looking: Looking, below: Below): void {
  const met = new Map<FormItem, number>();
  let last = -1;
  listOf(holder['item']).forEach((item, at) => {
    if (!isObject(item)) return;
    const place = [...below, 'item', at];
    const form = forms.byLink.get(textOf(item['linkId']) ?? '');
    if (form === undefined) {
      // That every item has a linkId is told by the structure.
      if (item['linkId'] !== undefined) sayUnknown(looking, place);
      return;
    }
    const count = (met.get(form) ?? 0) + 1;
    met.set(form, count);
    if (count === 2 && form.item['repeats'] !== true) sayRepeated(looking, place);
    if (form.position < last) sayContradiction(looking, 'form-order', place);
    last = Math.max(last, form.position);
    checkItem(item, form, looking, place);
  });
  checkRequired(forms, met, looking, below);
}

function checkItem(item: JsonObject, form: FormItem, looking: Looking, place: Below): void {
  const { scope } = looking;
  const answers = objectsOf(item['answer']);
  const filled = answers.length > 0 || item['item'] !== undefined;
  if (filled && isEnabled(form.item, looking.given) === false) {
    sayContradiction(looking, 'form-disabled', place, itemRule('enableWhen'));
    return;
  }
  const text = form.item['text'];
  if (typeof item['text'] === 'string' && typeof text === 'string' && item['text'] !== text) {
    // A translation is another text, and no rule forbids it.
    const rule = `${responses}#QuestionnaireResponse.item.text`;
    const said = { severity: 'warning', rule } as const;
    report(scope, 'contradiction', { reason: 'form-text' }, said, [...place, 'text']);
  }
  if (form.type === 'group') {
    if (answers.length > 0) sayContradiction(looking, 'form-group', [...place, 'answer']);
    checkItems(item, form.below, looking, place);
  } else if (form.type === 'display') {
    if (answers.length > 0) sayContradiction(looking, 'form-display', [...place, 'answer']);
  } else {
    checkQuestion(item, form, looking, place);
  }
}

function checkQuestion(item: JsonObject, form: FormItem, looking: Looking, place: Below): void {
  const answers = listOf(item['answer']);
  if (item['item'] !== undefined) {
    sayContradiction(looking, 'form-below-answer', [...place, 'item']);
  }
  if (answers.length > 1 && form.item['repeats'] !== true) {
    const said = { rule: itemRule('repeats') };
    report(looking.scope, 'too-many', { reason: 'form-answers' }, said, [...place, 'answer']);
  }
  const asked = looking.asked.get(form) ?? askedBy(form);
  looking.asked.set(form, asked);
  answers.forEach((answer, at) => {
    if (!isObject(answer)) return;
    const below = [...place, 'answer', at];
    checkAnswer(answer, asked, looking.scope, below);
    if (answer['item'] !== undefined || form.below.items.length > 0) {
      checkItems(answer, form.below, looking, below);
    }
  });
  if (looking.complete && answers.length === 0 && isAsked(form, looking)) {
    sayMissing(looking, [...place, 'answer']);
  }
}

/** What must be answered and is not there; below what is not there nothing is asked. */
function checkRequired(
  { items }: FormItems,
  met: ReadonlyMap<FormItem, number>,
  looking: Looking,
  below: Below,
): void {
  if (!looking.complete) return;
  for (const form of items) {
    if (!met.has(form) && isAsked(form, looking)) sayMissing(looking, [...below, 'item']);
  }
}

/** A required item that is surely enabled. */
function isAsked({ item, type }: FormItem, { given }: Looking): boolean {
  return item['required'] === true && type !== 'display' && isEnabled(item, given) === true;
}

function sayMissing({ scope }: Looking, place: Below): void {
  const said = { rule: itemRule('required') };
  report(scope, 'missing-property', { reason: 'form-answer' }, said, place);
}

function sayRepeated({ scope }: Looking, place: Below): void {
  report(scope, 'too-many', { reason: 'form-item' }, { rule: itemRule('repeats') }, place);
}

function sayUnknown({ scope }: Looking, place: Below): void {
  const said = { rule: structureRule };
  report(scope, 'unknown-property', { reason: 'form-item' }, said, [...place, 'linkId']);
}

/** The structure of a response is that of its form. */
function sayContradiction(
  { scope }: Looking,
  reason: 'form-order' | 'form-group' | 'form-display' | 'form-below-answer' | 'form-disabled',
  place: Below,
  rule = structureRule,
): void {
  report(scope, 'contradiction', { reason }, { rule }, place);
}
