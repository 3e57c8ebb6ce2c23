import type { UnitCode } from '../../model/primitive.ts';
import type { Measurement } from '../../model/statement.ts';
import { type NumberText, readNumber } from '../number.ts';
import type { Plan } from '../plan.ts';
import type { Problem, Reading } from './built.ts';

export interface QuantityText extends NumberText {
  readonly unit: UnitCode;
}

/**
 * The quantity of a value. Its unit stands behind the number, in a field of its own, or in the
 * mapping; where two of these are given they must agree, except that a unit written out goes before
 * the one that the mapping states for bare numbers.
 */
export function readQuantity(
  reading: Reading,
  stated: UnitCode | undefined,
  plan: Plan,
): QuantityText | Problem {
  const number = readNumber(reading.text, plan.decimalMark);
  if (typeof number === 'string') return numberProblem(number, plan);
  const written = [number.suffix, reading.unitText].filter(
    (text) => text !== undefined && text !== '',
  );
  const units = written.map((text) => plan.units.get(text ?? ''));
  if (units.includes(undefined)) {
    return {
      problem: 'unknown-unit',
      message: 'the mapping does not say which unit this word is',
      expected: 'a word of units in the mapping',
    };
  }
  const [unit = stated, other] = units;
  if (other !== undefined && other !== unit) {
    return {
      problem: 'unit-conflict',
      message: 'the value and the unit field state different units',
    };
  }
  if (unit === undefined) {
    return {
      problem: 'missing-unit',
      message: 'neither the record nor the mapping states the unit',
      expected: 'a unit in the value, in a field, or in the mapping',
    };
  }
  return { ...number, unit };
}

function numberProblem(code: string, plan: Plan): Problem {
  const expected = `a number with the decimal mark ${plan.decimalMark} and no mark for thousands`;
  return code === 'decimal-mark'
    ? { problem: 'decimal-mark', message: 'the number can be read in two ways', expected }
    : { problem: 'not-a-number', message: 'this is no number', expected };
}

/** A quantity as it stands in a statement. */
export function quantityParts({
  value,
  unit,
  comparator,
}: QuantityText): Pick<Measurement, 'unit' | 'comparator'> & { value: string } {
  return { value, unit, ...(comparator !== undefined && { comparator }) };
}
