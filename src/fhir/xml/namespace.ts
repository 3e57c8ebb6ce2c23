/** @see https://hl7.org/fhir/R4/xml.html */
export const FHIR_NAMESPACE = 'http://hl7.org/fhir';
