import type { Attribute, Measurement } from '../../model/statement.ts';
import { readNumber } from '../number.ts';
import type { Plan } from '../plan.ts';
import type { AttributeTarget, MeasurementTarget, ScaleTarget, SymptomTarget } from '../target.ts';
import {
  type Builder,
  isState,
  noRegion,
  type Problem,
  placed,
  type Reading,
  reasonOf,
  unknownWord,
} from './built.ts';
import { type QuantityText, readQuantity } from './quantity.ts';

export const buildMeasurement: Builder<MeasurementTarget> = ({ target }, reading, plan) => {
  const { meaning } = reading;
  const conditions = reading.conditions ?? target.conditions;
  const measure = plan.catalogue.measures.get(target.measure);
  const region = reading.region ?? target.region ?? measure?.region;
  if (region === undefined || measure === undefined) return noRegion;
  const shared = {
    kind: 'measurement' as const,
    ...placed(region, reading),
    measure: target.measure,
    ...(conditions !== undefined && { conditions }),
  };
  if (isState(meaning)) {
    const unit = target.unit ?? measure.unit;
    return { statements: [{ ...shared, unit, unusable: reasonOf(meaning) }] };
  }
  if (meaning !== undefined) return unknownWord('a number, or a word for no value');
  const quantity = readQuantity(reading, target.unit, plan);
  if ('problem' in quantity) return quantity;
  const allowed = [measure.unit, ...(measure.units ?? [])];
  if (!allowed.includes(quantity.unit)) {
    return {
      problem: 'wrong-unit',
      message: 'this measure does not take that unit',
      expected: allowed.join(', '),
    };
  }
  if (!isExpected(quantity, target)) {
    return {
      problem: 'implausible-value',
      message: 'the number is outside the limits that the mapping expects',
      expected: `${target.expect?.low ?? ''} to ${target.expect?.high ?? ''} ${target.unit ?? ''}`,
    };
  }
  return { statements: [{ ...shared, ...quantityParts(quantity) }] };
};

export const buildScale: Builder<ScaleTarget> = ({ target }, reading, plan) => {
  const { side, at, meaning, text } = reading;
  const scale = plan.catalogue.scales.get(target.scale);
  const region = reading.region ?? target.region;
  const shared = {
    kind: 'scale-score' as const,
    scale: target.scale,
    version: target.version,
    ...(region !== undefined && { region }),
    ...(side !== undefined && { side }),
    ...(at !== undefined && { at }),
  };
  if (scale?.type === 'ordinal') {
    const grades = (scale.grades ?? []).map(({ code }) => code);
    if (typeof meaning !== 'string' || !grades.includes(meaning)) {
      return unknownWord(`a word for one of ${grades.join(', ')}`);
    }
    return { statements: [{ ...shared, score: meaning }] };
  }
  if (meaning !== undefined || !/^\d{1,5}$/.test(text)) {
    return { problem: 'not-a-number', message: 'this is no whole number', expected: 'a score' };
  }
  return { statements: [{ ...shared, score: Number(text) }] };
};

const answers = ['yes', 'no', 'unsure', 'declined', 'not-asked'] as const;

export const buildSymptom: Builder<SymptomTarget> = ({ target }, reading) => {
  const { region = target.region, side, at, meaning } = reading;
  const answer = answers.find((known) => known === meaning);
  if (answer === undefined) return unknownWord(`a word for one of ${answers.join(', ')}`);
  return {
    statements: [
      {
        kind: 'symptom',
        symptom: target.symptom,
        answer,
        ...(target.toldBy !== undefined && { toldBy: target.toldBy }),
        ...(region !== undefined && { region }),
        ...(side !== undefined && { side }),
        ...(at !== undefined && { at }),
      },
    ],
  };
};

export const buildAttribute: Builder<AttributeTarget> = ({ target }, reading, plan) => {
  const { region = target.region, side } = reading;
  if (region === undefined) return noRegion;
  const value = attributeValue(target, reading, plan);
  if (typeof value === 'object' && 'problem' in value) return value;
  return {
    attribute: {
      finding: target.finding,
      region,
      ...(side !== undefined && { side }),
      value: { attribute: target.attribute, value },
    },
  };
};

function attributeValue(
  target: AttributeTarget,
  reading: Reading,
  plan: Plan,
): Attribute['value'] | Problem {
  const { meaning } = reading;
  const row = plan.catalogue.attributes.get(target.attribute);
  switch (row?.type) {
    case 'boolean':
      return meaning === 'yes' || meaning === 'no' ? meaning === 'yes' : unknownWord('yes or no');
    case 'count': {
      const number = readNumber(reading.text, plan.decimalMark);
      if (
        typeof number === 'string' ||
        number.suffix ||
        number.comparator ||
        /\D/.test(number.value)
      ) {
        return { problem: 'not-a-number', message: 'this is no count', expected: 'a whole number' };
      }
      return Number(number.value);
    }
    case 'quantity': {
      const quantity = readQuantity(reading, target.unit, plan);
      return 'problem' in quantity ? quantity : quantityParts(quantity);
    }
    default: {
      const codes = (row?.values ?? []).map(({ code }) => code);
      const known = typeof meaning === 'string' && codes.includes(meaning);
      return known ? meaning : unknownWord(`a word for one of ${codes.join(', ')}`);
    }
  }
}

function quantityParts({
  value,
  unit,
  comparator,
}: QuantityText): Pick<Measurement, 'unit' | 'comparator'> & { value: string } {
  return { value, unit, ...(comparator !== undefined && { comparator }) };
}

/** The limits are in the unit that the mapping states; a value in another unit is not held to them. */
function isExpected(quantity: QuantityText, { expect, unit }: MeasurementTarget): boolean {
  if (expect === undefined || quantity.unit !== unit) return true;
  const value = Number(quantity.value);
  const { low, high } = expect;
  return (
    (low === undefined || value >= Number(low)) && (high === undefined || value <= Number(high))
  );
}
