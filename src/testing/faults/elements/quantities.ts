import { type DataFault, dataFaults, type Fault, type JsonObject } from '../fault.ts';
import { adding, all, answering, every, setting, typeHaving, without } from '../place.ts';
import { binding, invariant, primitive, section } from '../rules.ts';

const UCUM = 'http://unitsofmeasure.org';
const ucumRule = section('UCUM', 'terminologies-systems.html');

/** Faults of quantities, ranges, ratios and their UCUM units. */
export const quantityFaults: readonly Fault[] = dataFaults('quantity', [
  notUcum('unit-not-ucum', 'a unit code that UCUM does not have', 'mmols'),
  notUcum('unit-in-wrong-case', 'a unit code in the case of another unit or of none', 'MM'),
  notUcum('unit-with-space', 'a unit code with a space', 'mm Hg'),
  notUcum('unit-in-words', 'a unit code in words', 'millimetres'),
  notUcum('unit-with-open-brace', 'a unit code with a brace that is not closed', '{score'),
  notUcum('unit-with-open-bracket', 'a unit code with a bracket that is not closed', 'mm[Hg'),
  notUcum('unit-with-double-slash', 'a unit code with two strokes in a row', 'L//min'),
  notUcum('unit-with-exponent-sign', 'a unit code with a caret', 'mm^2'),
  notUcum('unit-with-degree-sign', 'a unit code with a character outside ASCII', '°'),
  notUcum('unit-with-prefix-only', 'a unit code that is only a prefix', 'k'),
  {
    id: 'unit-code-without-system',
    title: 'a unit code without system',
    rule: invariant('qty-3', 'Quantity'),
    code: 'invariant',
    plant: without(every('valueQuantity'), 'system'),
  },
  {
    id: 'unit-system-not-absolute',
    title: 'a unit system that is no absolute URI',
    rule: primitive('uri'),
    code: 'value',
    plant: setting(every('valueQuantity'), 'system', 'unitsofmeasure.org'),
  },
  {
    id: 'comparator-unknown',
    title: 'a comparator outside the required list',
    rule: binding('Quantity.comparator', 'quantity-comparator'),
    code: 'code-invalid',
    plant: setting(every('valueQuantity'), 'comparator', '=<'),
  },
  {
    id: 'comparator-in-words',
    title: 'a comparator in words',
    rule: binding('Quantity.comparator', 'quantity-comparator'),
    code: 'code-invalid',
    plant: setting(every('valueQuantity'), 'comparator', 'more than'),
  },
  {
    id: 'quantity-value-in-words',
    title: 'a value with its unit in it',
    rule: primitive('decimal'),
    code: 'structure',
    plant: setting(every('valueQuantity'), 'value', '4 mm'),
  },
  {
    id: 'quantity-value-with-comma',
    title: 'a value as text with a decimal comma',
    rule: primitive('decimal'),
    code: 'structure',
    plant: setting(every('valueQuantity'), 'value', '4,0'),
  },
  {
    id: 'range-reversed',
    title: 'a range whose low end is above its high end',
    rule: invariant('rng-2', 'Range'),
    code: 'invariant',
    plant: answering({ valueRange: { low: millimetres(9), high: millimetres(3) } }),
  },
  {
    id: 'range-with-comparator',
    title: 'the end of a range has a comparator',
    rule: invariant('sqty-1', 'Quantity'),
    code: 'invariant',
    plant: answering({ valueRange: { low: { ...millimetres(3), comparator: '<' } } }),
  },
  {
    id: 'ratio-without-denominator',
    title: 'a ratio without denominator',
    rule: invariant('rat-1', 'Ratio'),
    code: 'invariant',
    plant: answering({ valueRatio: { numerator: millimetres(3) } }),
  },
  {
    id: 'ratio-without-numerator',
    title: 'a ratio without numerator',
    rule: invariant('rat-1', 'Ratio'),
    code: 'invariant',
    plant: answering({ valueRatio: { denominator: millimetres(3) } }),
  },
  {
    id: 'reference-range-empty',
    title: 'a reference range without low, high and text',
    rule: invariant('obs-3', 'Observation'),
    code: 'invariant',
    plant: adding(all('Observation'), 'referenceRange', { appliesTo: [{ text: 'adults' }] }),
  },
  {
    id: 'reference-range-with-comparator',
    title: 'the end of a reference range has a comparator',
    rule: invariant('sqty-1', 'Quantity'),
    code: 'invariant',
    plant: adding(
      typeHaving('Observation', 'valueQuantity'),
      'referenceRange',
      { high: { ...millimetres(5), comparator: '<' } },
      'high',
    ),
  },
  {
    id: 'component-range-empty',
    title: 'a reference range of a component without low, high and text',
    rule: invariant('obs-3', 'Observation'),
    code: 'invariant',
    plant: adding(every('component'), 'referenceRange', { appliesTo: [{ text: 'adults' }] }),
  },
]);

/** A fault of the unit code of a measured value. */
function notUcum(id: string, title: string, code: string): DataFault {
  return {
    id,
    title,
    rule: ucumRule,
    code: 'code-invalid',
    plant: setting(every('valueQuantity'), 'code', code),
  };
}

function millimetres(value: number): JsonObject {
  return { value, unit: 'mm', system: UCUM, code: 'mm' };
}
