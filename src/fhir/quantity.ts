import type { Quantity } from 'fhir/r4.js';
import { decimalProperty } from './json/decimal.ts';
import { UCUM } from './names/systems.ts';

/** A FHIR Quantity in UCUM, with the decimal as stated. */
export function quantity(
  value: string,
  unit: string,
  comparator?: '<' | '<=' | '>=' | '>',
): Quantity {
  return {
    ...decimalProperty('value', value),
    ...(comparator !== undefined && { comparator }),
    unit,
    system: UCUM,
    code: unit,
  };
}
