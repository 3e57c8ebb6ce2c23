import type { CodeableConcept, Coding } from 'fhir/r4.js';
import { hl7Display } from '../terminology/published/hl7.ts';
import { loincDisplay } from '../terminology/published/loinc.ts';
import { DIAGNOSTIC_SERVICE, LOINC } from './names/systems.ts';

/** What a receiver files a record by, and the exam does not say. The same at export and reading. */
export interface Filing {
  /** Category of the report. Default: other, of the diagnostic services of HL7's table 0074. */
  readonly reportCategory?: Coding;
  /** Default `unknown`: whether the visit as a whole is over is not the exam's to say. */
  readonly encounterStatus?: 'in-progress' | 'finished' | 'unknown';
  /** Security labels of everything but people, places and devices, and of the bundle. */
  readonly security?: readonly Coding[];
  /** Tags of the same. */
  readonly tags?: readonly Coding[];
  /** Type of the filed document. Default: LOINC 34109-9 Note, of FHIR's document types. */
  readonly documentType?: Coding;
  /** Category of the filed document. Default: the same, which is one of FHIR's document classes too. */
  readonly documentCategory?: Coding;
}

interface Labels {
  readonly security?: Coding[];
  readonly tag?: Coding[];
}

/** The labels as they stand in `meta`. */
export function labelsOf({ security, tags }: Filing): Labels {
  return {
    ...(security !== undefined && security.length > 0 && { security: [...security] }),
    ...(tags !== undefined && tags.length > 0 && { tag: [...tags] }),
  };
}

export function reportCategory({ reportCategory: given }: Filing): CodeableConcept {
  const display = hl7Display(DIAGNOSTIC_SERVICE, 'OTH');
  return { coding: [given ?? { system: DIAGNOSTIC_SERVICE, code: 'OTH', display }] };
}

/** @see https://hl7.org/fhir/R4/valueset-c80-doc-typecodes.html */
export function documentType({ documentType: given }: Filing, text: string): CodeableConcept {
  return { coding: [given ?? note()], text };
}

/** @see https://hl7.org/fhir/R4/valueset-document-classcodes.html */
export function documentCategory({ documentCategory: given }: Filing): CodeableConcept {
  return { coding: [given ?? note()] };
}

function note(): Coding {
  const display = loincDisplay('34109-9');
  return { system: LOINC, code: '34109-9', ...(display !== undefined && { display }) };
}
