import type * as r4 from 'fhir/r4.js';
import type * as r5 from 'fhir/r5.js';
import type { FhirVersion } from '../../fhir/version.ts';
import type { Clinic } from '../clinic.ts';
import { clinicCodeSystem } from './code-system.ts';
import { clinicConceptMap } from './concept-map.ts';
import { clinicValueSets } from './value-sets.ts';

/**
 * What a server needs besides the guide to check the records of a clinic: its own codes as a
 * CodeSystem, the value sets of the guide with them, and its code map as a ConceptMap. The value sets
 * have the ids and URLs of the guide, since its profiles bind to these; they are to be stored in their
 * place.
 *
 * @param clinic As `parseClinic` gave it.
 * @param options `fhirVersion`: default that of the clinic's exports, else `R4`.
 * @returns The resources; none where the file has neither rows of its own nor a code map.
 * @example
 * const clinic = orThrow('read the clinic file', parseClinic({ format: 'face-neck-clinic/1' }));
 * const none = clinicDefinitions(clinic);
 * @see https://hl7.org/fhir/R4/terminologies.html#binding
 */
export function clinicDefinitions(
  clinic: Clinic,
  options: { readonly fhirVersion?: FhirVersion } = {},
): readonly (r4.CodeSystem | r4.ValueSet | r4.ConceptMap | r5.ConceptMap)[] {
  const version = options.fhirVersion ?? clinic.export.fhirVersion ?? 'R4';
  const codes = clinicCodeSystem(clinic);
  const map = clinicConceptMap(clinic, version);
  return [
    ...(codes === undefined ? [] : [codes]),
    ...clinicValueSets(clinic),
    ...(map === undefined ? [] : [map]),
  ];
}
