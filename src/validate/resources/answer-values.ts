import { grammars } from '../terminology/grammars.ts';
import { checkBinding } from '../terminology/terminology.ts';
import { choiceName, type JsonObject, textOf } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';
import { answerKey, type FormItem, optionsOf, optionTypes } from './form.ts';

/** Types of answers by type of question. @see https://hl7.org/fhir/R5/codesystem-item-type.html */
const answerTypes: ReadonlyMap<string, readonly string[]> = new Map([
  ...['boolean', 'decimal', 'integer', 'date', 'dateTime', 'time', 'string'].map(
    (type): [string, string[]] => [type, [type.charAt(0).toUpperCase() + type.slice(1)]],
  ),
  ['text', ['String']],
  ['url', ['Uri']],
  ['attachment', ['Attachment']],
  ['reference', ['Reference']],
  ['quantity', ['Quantity']],
  ['coding', ['Coding']],
  ['choice', ['Coding']],
  ['open-choice', ['Coding', 'String']],
]);

const answerRule =
  'https://hl7.org/fhir/R4/questionnaireresponse-definitions.html#QuestionnaireResponse.item.answer.value_x_';

/** The page of an element of a form. */
export function itemRule(name: string): string {
  return `https://hl7.org/fhir/R4/questionnaire-definitions.html#Questionnaire.item.${name}`;
}

/** What one question asks of each of its answers; worked out once for all of them. */
export interface Asked {
  readonly form: FormItem;
  readonly types: ReadonlySet<string> | undefined;
  readonly options: ReadonlySet<string>;
  /** A text, or a value of any kind, may be given in place of an option. */
  readonly besides: 'nothing' | 'text' | 'anything';
}

export function askedBy(form: FormItem): Asked {
  const { item, type } = form;
  const constraint = textOf(item['answerConstraint']);
  const besides =
    constraint === 'optionsOrType'
      ? 'anything'
      : constraint === 'optionsOrString' || type === 'open-choice'
        ? 'text'
        : 'nothing';
  const known = answerTypes.get(type);
  // A choice may be among texts, numbers, dates and references as well.
  const offered = optionTypes(form);
  const chosen = offered.size > 0 && type.endsWith('choice') ? [...offered] : known;
  const types = chosen && new Set([...chosen, ...(besides === 'text' ? ['String'] : [])]);
  return { form, types, options: optionsOf(form), besides };
}

/** Holds one answer to its question: type, length, and what there is to choose from. */
export function checkAnswer(
  answer: JsonObject,
  { form, types, options, besides }: Asked,
  scope: Scope,
  below: readonly (string | number)[],
): void {
  const name = choiceName(answer, 'value');
  if (name === undefined) return;
  const type = name.slice('value'.length);
  const place = [...below, name];
  if (types !== undefined && !types.has(type)) {
    const facts = { reason: 'answer', types: [...types] } as const;
    report(scope, 'wrong-type', facts, { rule: answerRule }, place);
    return;
  }
  const value = answer[name];
  // An extension in place of the value says why there is none.
  if (value === undefined) return;
  const maximum = form.item['maxLength'];
  if (typeof value === 'string' && typeof maximum === 'number' && value.length > maximum) {
    const rule = itemRule('maxLength');
    report(scope, 'too-large', { reason: 'answer', maximum }, { rule }, place);
  }
  if (besides === 'anything' || (besides === 'text' && type === 'String')) return;
  if (options.size > 0) {
    const key = answerKey(answer);
    if (key !== undefined && options.has(key)) return;
    const rule = itemRule(form.contained === undefined ? 'answerOption' : 'answerValueSet');
    report(scope, 'unknown-code', { reason: 'answer-option' }, { rule }, place);
  } else if (type === 'Coding') {
    checkSet(value, form, scope, place);
  }
}

/**
 * A value set that is not held, or is in the form itself without all its codes, is left to a
 * terminology server.
 */
function checkSet(
  value: unknown,
  { item }: FormItem,
  scope: Scope,
  place: readonly (string | number)[],
): void {
  const [valueSet] = (textOf(item['answerValueSet']) ?? '').split('|');
  if (valueSet === undefined || valueSet === '') return;
  if (scope.definitions.valueSets.has(valueSet) || grammars.has(valueSet)) {
    checkBinding(value, { codes: valueSet }, scope, place);
    return;
  }
  const why = `the value set ${valueSet} is not held`;
  const rule = itemRule('answerValueSet');
  const asked = valueSet.startsWith('#') ? {} : { valueSet, strength: 'required' as const };
  scope.unchecked.push({ rule, path: [...scope.path, ...place], why, ...asked });
}
