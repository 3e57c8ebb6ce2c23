/** Asked for by the licence under which the ids and names are published; see NOTICE. */
export const snomedCopyright =
  'Includes SNOMED CT® ids and names of the SNOMED International Global Patient Set 2020-09, ' +
  '© SNOMED International, under the Creative Commons Attribution 4.0 International licence, as ' +
  'published in HL7 Terminology (ValueSet snomed-intl-gps, version 20200930). Displays are the ' +
  'published names without their semantic tag, which is a change to them. SNOMED CT® was originally ' +
  'created by the College of American Pathologists. No endorsement by SNOMED International or its ' +
  'Members is implied. No relationships, hierarchy or definitions are included.';

/** @see http://loinc.org/license */
export const loincCopyright =
  'This material contains content from LOINC (http://loinc.org). LOINC is copyright © Regenstrief ' +
  'Institute, Inc. and the Logical Observation Identifiers Names and Codes (LOINC) Committee and is ' +
  'available at no cost under the license at http://loinc.org/license. LOINC® is a registered United ' +
  'States trademark of Regenstrief Institute, Inc.';
