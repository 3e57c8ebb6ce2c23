import type { UnitCode } from '../../model/primitive.ts';
import type { Measurement } from '../../model/statement.ts';
import type { Plan } from '../mapping/plan.ts';
import { type NumberText, readNumber } from '../values/number.ts';
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
      facts: { reason: 'word' },
    };
  }
  const [unit = stated, other] = units;
  if (other !== undefined && other !== unit) {
    return {
      problem: 'unit-conflict',
      facts: { reason: 'fields' },
    };
  }
  if (unit === undefined) {
    return {
      problem: 'missing-unit',
      facts: { reason: 'nowhere' },
    };
  }
  return { ...number, unit };
}

function numberProblem(code: string, plan: Plan): Problem {
  return code === 'decimal-mark'
    ? {
        problem: 'decimal-mark',
        facts: {
          reason: 'two-readings',
          character: plan.decimalMark,
        },
      }
    : {
        problem: 'not-a-number',
        facts: {
          reason: 'number',
          character: plan.decimalMark,
        },
      };
}

/** A quantity as it stands in a statement. */
export function quantityParts({
  value,
  unit,
  comparator,
}: QuantityText): Pick<Measurement, 'unit' | 'comparator'> & { value: string } {
  return { value, unit, ...(comparator !== undefined && { comparator }) };
}
