import type { Difference } from '../../slow/profile-bed/differences.ts';

/**
 * Where our verdict on a case of the corpora of all types is another than that of HL7's validator, and
 * who is right by the words of the specification. A difference that no row tells fails the suites.
 */
export const differences: readonly Difference[] = [
  {
    we: 'refused',
    says: /^wrong-target /,
    right: 'we',
    why: 'The type of a resource stands in a literal reference, and must be one that the element takes: https://hl7.org/fhir/R4/references.html#literal. The chain looks only at what it can fetch.',
  },
  {
    we: 'refused',
    says: /^invalid-value (?:coding-system|value-set-as-system)$/,
    right: 'we',
    why: 'Coding.system is an absolute reference to a code system, and a value set is none: https://hl7.org/fhir/R4/datatypes.html#Coding. HL7 says so where a terminology server is asked.',
  },
  {
    we: 'refused',
    says: /^unknown-code check-digit$/,
    right: 'we',
    why: 'Ids of SNOMED CT and LOINC codes have check digits; the chain holds neither system.',
  },
  {
    we: 'refused',
    says: /^unknown-unit ucum-code$/,
    right: 'we',
    why: 'No code of the grammar of UCUM: https://ucum.org/ucum.',
  },
  {
    we: 'refused',
    says: /^unknown-code required-set$/,
    right: 'we',
    why: 'Resource.language is bound to BCP 47 with required strength, and words are not a tag of it: https://hl7.org/fhir/R4/valueset-all-languages.html. The chain does not look at languages.',
  },
  {
    we: 'refused',
    says: /^empty-value list$/,
    right: 'we',
    why: 'A list is never empty: https://hl7.org/fhir/R4/json.html. The chain passes over empty lists of primitives.',
  },
  {
    we: 'refused',
    says: /^empty-value element$/,
    right: 'we',
    why: 'ele-1: an id is no content. The chain evaluates it on elements with children, and counts the id as one.',
  },
  {
    we: 'refused',
    says: /^invalid-narrative xhtml$/,
    right: 'we',
    why: 'txt-1 and https://hl7.org/fhir/R4/narrative.html: one div. The chain stops reading at the end of the first.',
  },
  {
    we: 'refused',
    says: /^broken-invariant per-1$/,
    right: 'we',
    why: 'per-1: "start SHALL have a lower or equal value than end" (https://hl7.org/fhir/R5/datatypes.html#Period). The expression of R5 compares the bounds of days in all time zones, and so passes an end one day before the start.',
  },
  {
    we: 'refused',
    says: /^wrong-display /,
    right: 'we',
    why: 'A display of spaces is not that of the code: https://hl7.org/fhir/R4/datatypes.html#Coding. The chain takes it as none.',
  },
  {
    we: 'accepted',
    says: /^XHTML_XHTML_OUT_OF_PLACE/,
    right: 'we',
    why: 'A col stands in a colgroup: https://html.spec.whatwg.org/#the-colgroup-element. The chain takes it in a table alone.',
  },
  {
    we: 'accepted',
    says: /^(?:IG_HL7_|SD_CONTEXT_|SD_MUST_HAVE_|SM_|ED_SEARCH_)/,
    right: 'reference',
    why: "HL7's own policies for its guides, paths of contexts, FHIRPath of search parameters and the language of maps: of these definitions only form, codes and invariants are looked at.",
  },
  {
    we: 'accepted',
    says: /^Terminology_PassThrough_TX_Message/,
    right: 'open',
    why: 'Displays of ISO 3166 as the chain has them, and systems under bindings that are not required.',
  },
  {
    we: 'accepted',
    says: /^Terminology_TX_NoValid_1_CC/,
    right: 'we',
    why: 'The codes are below PRN and SIB, which the value set takes with all below: https://terminology.hl7.org/CodeSystem-v3-RoleCode.html. The chain does not follow subsumedBy.',
  },
  {
    we: 'accepted',
    says: /^[a-z]+-\d+[a-z]?$/,
    unchecked: true,
    right: 'reference',
    why: 'An invariant that only the thorough level evaluates; the fast one says that it was not looked at.',
  },
];
