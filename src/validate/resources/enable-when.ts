import { append } from '../../data/append.ts';
import { spend } from '../../issues/budget.ts';
import { choiceName, isObject, type JsonObject, objectsOf, textOf } from '../walk/json.ts';
import { answerKey } from './form.ts';

/**
 * Whether an item of a form is enabled by the answers to others; `undefined` where that cannot be told.
 * @see https://hl7.org/fhir/R5/questionnaire-definitions.html#Questionnaire.item.enableWhen
 */
export function isEnabled(item: JsonObject, given: GivenAnswers): boolean | undefined {
  // Conditions in FHIRPath stand in extensions; such an item is left to who evaluates them.
  if (objectsOf(item['extension']).some(({ url }) => /enableWhen/i.test(String(url)))) {
    return undefined;
  }
  const conditions = objectsOf(item['enableWhen']);
  if (conditions.length === 0) return true;
  const verdicts = conditions.map((condition) => isMet(condition, given));
  const all = textOf(item['enableBehavior']) === 'all';
  if (verdicts.includes(!all)) return !all;
  return verdicts.includes(undefined) ? undefined : all;
}

/** Answers by the linkId of their question; `undefined` where the question stands there more than once. */
export type GivenAnswers = ReadonlyMap<string, readonly JsonObject[] | undefined>;

/** All answers of a response, wherever they stand in it. */
export function givenAnswers(response: JsonObject): GivenAnswers {
  const found = new Map<string, readonly JsonObject[] | undefined>();
  const open: JsonObject[] = [response];
  for (let holder = open.pop(); holder !== undefined; holder = open.pop()) {
    for (const item of objectsOf(holder['item'])) {
      const link = textOf(item['linkId']);
      const answers = objectsOf(item['answer']);
      // Which of several is meant depends on where they stand.
      if (link !== undefined) found.set(link, found.has(link) ? undefined : answers);
      open.push(item);
      append(open, answers);
    }
  }
  return found;
}

function isMet(condition: JsonObject, given: GivenAnswers): boolean | undefined {
  const question = textOf(condition['question']) ?? '';
  const answers = given.get(question) ?? (given.has(question) ? undefined : []);
  if (answers === undefined) return undefined;
  spend(1 + answers.length);
  const operator = textOf(condition['operator']);
  if (operator === 'exists') {
    const wanted = condition['answerBoolean'];
    return typeof wanted === 'boolean' ? answers.length > 0 === wanted : undefined;
  }
  const name = choiceName(condition, 'answer');
  if (name === undefined) return undefined;
  const wanted = { [`value${name.slice('answer'.length)}`]: condition[name] };
  const verdicts = answers.map((answer) => compared(operator, answer, wanted));
  if (verdicts.includes(true)) return true;
  return verdicts.includes(undefined) ? undefined : false;
}

function compared(
  operator: string | undefined,
  answer: JsonObject,
  wanted: JsonObject,
): boolean | undefined {
  if (operator === '=' || operator === '!=') {
    const same = isSame(answer, wanted);
    return same === undefined ? undefined : same === (operator === '=');
  }
  const order = orderOf(answer, wanted);
  if (order === undefined) return undefined;
  if (operator === '<') return order < 0;
  if (operator === '<=') return order <= 0;
  if (operator === '>') return order > 0;
  if (operator === '>=') return order >= 0;
  return undefined;
}

function isSame(answer: JsonObject, wanted: JsonObject): boolean | undefined {
  const name = choiceName(answer, 'value');
  if (name === undefined || name !== choiceName(wanted, 'value')) return undefined;
  // Amounts in other units, times of other precision or zone, and what has no value.
  if (/^value(?:Quantity|Date|DateTime|Time)$/.test(name)) {
    const order = orderOf(answer, wanted);
    return order === undefined ? undefined : order === 0;
  }
  const [one, other] = [answer[name], wanted[name]];
  if (one === undefined || other === undefined) return undefined;
  if (isObject(one) && name !== 'valueCoding' && name !== 'valueReference') return undefined;
  return answerKey(answer) === answerKey(wanted);
}

function orderOf(answer: JsonObject, wanted: JsonObject): number | undefined {
  const name = choiceName(answer, 'value');
  if (name === undefined || name !== choiceName(wanted, 'value')) return undefined;
  const [one, other] = [answer[name], wanted[name]];
  if (isObject(one) && isObject(other)) {
    const alike = ['system', 'code', 'unit'].every((part) => one[part] === other[part]);
    return alike ? numbers(one['value'], other['value']) : undefined;
  }
  if (typeof one === 'string' && typeof other === 'string') {
    const comparable = one.length === other.length && one.slice(19) === other.slice(19);
    if (!comparable) return undefined;
    return one < other ? -1 : one > other ? 1 : 0;
  }
  return numbers(one, other);
}

function numbers(one: unknown, other: unknown): number | undefined {
  return typeof one === 'number' && typeof other === 'number' ? one - other : undefined;
}
