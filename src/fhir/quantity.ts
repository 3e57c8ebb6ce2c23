import type { Quantity } from 'fhir/r4.js';
import { decimalProperty } from './json/decimal.ts';
import { PRECISION_EXTENSION, UCUM } from './names/systems.ts';

/**
 * How many decimal places a decimal has, where a number alone would lose some: stores that keep
 * decimals as floating point give 5 back for 5.0, and this beside it.
 */
export function precisionOf(value: string): { readonly _value?: object } {
  const shortest = String(Number(value));
  // Where more than zeros would be lost, no number of places brings it back.
  const zeros = value.slice(shortest.length);
  if (zeros === '' || !value.startsWith(shortest) || !/^\.?0+$/.test(zeros)) return {};
  const valueInteger = value.split('.')[1]?.length ?? 0;
  return { _value: { extension: [{ url: PRECISION_EXTENSION, valueInteger }] } };
}

/** A FHIR Quantity in UCUM, with the decimal as stated. */
export function quantity(
  value: string,
  unit: string,
  comparator?: '<' | '<=' | '>=' | '>',
): Quantity {
  return {
    ...decimalProperty('value', value),
    ...precisionOf(value),
    ...(comparator !== undefined && { comparator }),
    unit,
    system: UCUM,
    code: unit,
  };
}
