import type { Quantity } from '../../model/primitive.ts';
import { type Unit, units } from '../../terminology/tables/units.ts';
import { decimalText, divide, type Exact, exact, multiply, trimmed } from './decimal.ts';

const unitByCode: ReadonlyMap<string, Unit> = /*@__PURE__*/ new Map(
  units.map((unit) => [unit.code, unit]),
);

/** A quantity in another unit, with what it was made from. */
export interface Converted {
  readonly value: string;
  readonly unit: string;
  /** The quantity as recorded. */
  readonly original: Quantity;
  /** False when the division left a rest and the value was rounded to 12 decimals. */
  readonly exactly: boolean;
}

/** The unit as the library knows it: UCUM code, kind and exact factor. */
export function knownUnit(code: string): Unit | undefined {
  return unitByCode.get(code);
}

/**
 * The quantity in the UCUM unit `to`; undefined when a unit is unknown, the two are not of one kind
 * or the value is not a decimal. A comparator stays with the original.
 */
export function convertQuantity(quantity: Quantity, to: string): Converted | undefined {
  if (quantity.unit === to && exact(quantity.value) !== undefined) {
    return { value: quantity.value, unit: to, original: quantity, exactly: true };
  }
  const target = unitByCode.get(to);
  const inBase = baseValue(quantity.value, quantity.unit);
  const factor = target && factorOf(target);
  if (inBase === undefined || target === undefined || factor === undefined) return undefined;
  if (inBase.unit.base !== target.base) return undefined;
  const quotient = divide(inBase.value, factor, Math.max(inBase.value.scale, 12));
  if (quotient === undefined) return undefined;
  const value = quotient.exactly ? trimmed(quotient.value) : quotient.value;
  return { value: decimalText(value), unit: to, original: quantity, exactly: quotient.exactly };
}

/** The value in the base unit of its kind, in which quantities are compared without rounding. */
export function baseValue(
  value: string,
  unit: string,
): { readonly value: Exact; readonly unit: Unit } | undefined {
  const number = exact(value);
  const known = unitByCode.get(unit);
  const factor = known && factorOf(known);
  if (number === undefined || known === undefined || factor === undefined) return undefined;
  if (known.code === known.base) return { value: number, unit: known };
  return { value: multiply(number, factor), unit: known };
}

/** The factor without zeros at its end, so that 1.5 cm times 10 is 15 mm and not 15.0 mm. */
function factorOf(unit: Unit): Exact | undefined {
  const factor = exact(unit.factor);
  if (factor === undefined) return undefined;
  let { digits, scale } = factor;
  while (digits !== 0n && digits % 10n === 0n) {
    digits /= 10n;
    scale -= 1;
  }
  return { digits, scale };
}
