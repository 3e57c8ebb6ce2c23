export { CANONICAL_BASE } from '../../terminology/canonical-base.ts';

/** Code systems and identifier systems of open standards. */
export const SNOMED = 'http://snomed.info/sct';
export const LOINC = 'http://loinc.org';
export const UCUM = 'http://unitsofmeasure.org';
export const OBSERVATION_CATEGORY = 'http://terminology.hl7.org/CodeSystem/observation-category';
export const INTERPRETATION = 'http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation';
export const DATA_ABSENT_REASON = 'http://terminology.hl7.org/CodeSystem/data-absent-reason';
export const ACT_CODE = 'http://terminology.hl7.org/CodeSystem/v3-ActCode';
/** Labels that say what was done to a resource. @see http://terminology.hl7.org/CodeSystem/v3-ObservationValue */
export const OBSERVATION_VALUE = 'http://terminology.hl7.org/CodeSystem/v3-ObservationValue';
/** Sections of diagnostic services, HL7 table 0074. */
export const DIAGNOSTIC_SERVICE = 'http://terminology.hl7.org/CodeSystem/v2-0074';
export const EMPTY_REASON = 'http://terminology.hl7.org/CodeSystem/list-empty-reason';
export const DATA_OPERATION = 'http://terminology.hl7.org/CodeSystem/v3-DataOperation';
export const PARTICIPANT_TYPE = 'http://terminology.hl7.org/CodeSystem/provenance-participant-type';

/** @see https://hl7.org/fhir/R4/extension-observation-structurelaterality.html (extensions pack 5.x) */
export const LATERALITY_EXTENSION =
  'http://hl7.org/fhir/StructureDefinition/observation-structureLaterality';

/** @see https://hl7.org/fhir/R4/extension-bodysite.html */
export const BODY_SITE_EXTENSION = 'http://hl7.org/fhir/StructureDefinition/bodySite';

/** @see https://hl7.org/fhir/R4/extension-data-absent-reason.html */
export const ABSENT_EXTENSION = 'http://hl7.org/fhir/StructureDefinition/data-absent-reason';

/** @see https://hl7.org/fhir/R4/extension-quantity-precision.html */
export const PRECISION_EXTENSION = 'http://hl7.org/fhir/StructureDefinition/quantity-precision';

export const XHTML = 'http://www.w3.org/1999/xhtml';
