import type { CodeableConcept } from 'fhir/r4.js';
import { hl7Display } from '../terminology/hl7.ts';
import { INTERPRETATION, OBSERVATION_CATEGORY } from './systems.ts';

/** Category of an observation: examined, or told and recorded about the exam. */
export function category(code: 'exam' | 'survey'): CodeableConcept {
  return {
    coding: [
      { system: OBSERVATION_CATEGORY, code, display: hl7Display(OBSERVATION_CATEGORY, code) },
    ],
  };
}

/** Normal, abnormal, or for a sign positive, negative and indeterminate. */
export type InterpretationCode = 'N' | 'A' | 'POS' | 'NEG' | 'IND';

export function interpretation(code: InterpretationCode): CodeableConcept {
  return { coding: [{ system: INTERPRETATION, code, display: hl7Display(INTERPRETATION, code) }] };
}

/** POS and NEG are defined for clinical signs too: presence and absence of what the code names. */
export const presenceInterpretation = {
  present: 'POS',
  absent: 'NEG',
  indeterminate: 'IND',
} as const;
