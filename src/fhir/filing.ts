import type { CodeableConcept, Coding } from 'fhir/r4.js';
import { hl7Display } from '../terminology/published/hl7.ts';
import { DIAGNOSTIC_SERVICE } from './names/systems.ts';

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
