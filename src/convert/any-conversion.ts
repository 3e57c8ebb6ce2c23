import type { Outcome } from '../issues/issue.ts';
import { type Conversion, prepareFields } from './conversion.ts';
import { fhirConversion } from './fhir/conversion.ts';
import { isFhirMapping } from './mapping/is-fhir.ts';
import type { MappingOptions } from './prepare/prepare-mapping.ts';

/** A conversion by any mapping, of fields or of FHIR. It fails when anything is wrong with the mapping. */
export function prepareConversion(
  value: unknown,
  options: MappingOptions = {},
): Outcome<Conversion> {
  return isFhirMapping(value) ? fhirConversion(value, options) : prepareFields(value, options);
}
