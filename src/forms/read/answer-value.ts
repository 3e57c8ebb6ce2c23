import { isPlainObject } from '../../data/plain-data.ts';
import { decimalText } from '../../fhir/json/decimal.ts';
import { UCUM } from '../../fhir/names/systems.ts';
import type { Path } from '../../issues/path.ts';
import { decimalForm } from '../../model/primitive.ts';
import type { FormItem, FormOption } from '../form.ts';
import type { Reading } from './reading.ts';

/** What was answered: one of the answers of a choice, or a text as it stands in the exam. */
export type AnswerValue = { readonly option: FormOption } | { readonly text: string };

type ValueName = 'valueCoding' | 'valueDecimal' | 'valueInteger' | 'valueString';

const names: Readonly<Record<Exclude<FormItem['type'], 'group'>, ValueName>> = {
  choice: 'valueCoding',
  decimal: 'valueDecimal',
  integer: 'valueInteger',
  text: 'valueString',
  string: 'valueString',
};

/** A field of a form that was left empty. */
export function isBlank(answer: Readonly<Record<string, unknown>>): boolean {
  const { valueString } = answer;
  const given = Object.keys(answer).filter((key) => key.startsWith('value'));
  return given.length === 0 || (typeof valueString === 'string' && valueString.trim() === '');
}

/**
 * The value of one answer, held to what the item asks for. Displays are passed over: a renderer may
 * have translated them. Undefined where it does not fit, which is told, and where it is blank.
 */
export function answerValue(
  reading: Reading,
  item: FormItem,
  answer: Readonly<Record<string, unknown>>,
  path: Path,
): AnswerValue | undefined {
  const name = item.type === 'group' ? 'valueString' : names[item.type];
  if (isBlank(answer)) return undefined;
  const given = Object.keys(answer).filter((key) => key.startsWith('value'));
  const value = answer[name];
  if (given.length === 1 && given[0] === 'valueQuantity' && item.unit !== undefined) {
    return quantityValue(reading, item, answer['valueQuantity'], path);
  }
  const wrongType = (): undefined => {
    reading.report('wrong-type', path, { reason: 'answer-type', type: name }, answer);
  };
  if (given.length !== 1 || given[0] !== name) return wrongType();
  if (name === 'valueCoding') {
    return isPlainObject(value) ? optionValue(reading, item, value, path) : wrongType();
  }
  if (name === 'valueString') {
    return typeof value === 'string' ? { text: value } : wrongType();
  }
  if (typeof value !== 'number') return wrongType();
  return figureValue(reading, item, decimalText(answer, name), path);
}

/** Codes alone are compared. Without a system a code is that of the one that the item names. */
function optionValue(
  reading: Reading,
  { options = [] }: FormItem,
  { system, code }: Readonly<Record<string, unknown>>,
  path: Path,
): AnswerValue | undefined {
  const option = options.find(
    (one) => one.code === code && (system === undefined || system === one.system),
  );
  if (option !== undefined) return { option };
  const codes = options.map((one) => one.code);
  const near = typeof code === 'string' ? reading.nearest(code, codes) : undefined;
  reading.report('unknown-code', path, { reason: 'answer', codes, near }, code);
  return undefined;
}

/** A renderer can give a figure with its unit. Only the very unit that was asked for is taken. */
function quantityValue(
  reading: Reading,
  item: FormItem,
  quantity: unknown,
  path: Path,
): AnswerValue | undefined {
  if (!isPlainObject(quantity)) {
    reading.report('wrong-type', path, { reason: 'answer-type', type: 'Quantity' }, quantity);
    return undefined;
  }
  const { comparator, code, system, unit } = quantity;
  if (comparator !== undefined) {
    reading.report('invalid-value', path, { reason: 'bound' }, quantity);
    return undefined;
  }
  const isAsked =
    code === undefined ? unit === item.unit : code === item.unit && (system ?? UCUM) === UCUM;
  if (!isAsked) {
    const units = item.unit === undefined ? [] : [item.unit];
    reading.report('wrong-unit', path, { reason: 'answer', units }, quantity);
    return undefined;
  }
  return figureValue(reading, item, decimalText(quantity, 'value'), path);
}

function figureValue(
  reading: Reading,
  { type, unit = '1', minimum, maximum, usual }: FormItem,
  text: string | undefined,
  path: Path,
): AnswerValue | undefined {
  const isWhole = type !== 'integer' || (text !== undefined && /^-?[0-9]+$/.test(text));
  if (text === undefined || !decimalForm.test(text) || !isWhole) {
    const form = type === 'integer' ? 'whole-number' : 'decimal-text';
    reading.report('invalid-value', path, { reason: 'figure', form }, text);
    return undefined;
  }
  const value = Number(text);
  if ((minimum !== undefined && value < minimum) || (maximum !== undefined && value > maximum)) {
    const bounds = { minimum: minimum ?? '', maximum: maximum ?? '' };
    reading.report('implausible-figure', path, { reason: 'answer', ...bounds }, text);
    return undefined;
  }
  if (usual !== undefined && (value < usual.minimum || value > usual.maximum)) {
    reading.warn('implausible-figure', path, { reason: 'slip', ...usual, unit }, text);
  }
  return { text };
}
