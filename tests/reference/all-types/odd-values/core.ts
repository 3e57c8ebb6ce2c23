/** URL of one of HL7's own definitions. */
export const core = (name: string): string => `http://hl7.org/fhir/StructureDefinition/${name}`;
