import type { CodeableConcept } from 'fhir/r4.js';
import type { Polarity, Said } from '../kinds/facets/meaning.ts';
import type { TableName } from '../terminology/built-in.ts';
import { hl7Display } from '../terminology/published/hl7.ts';
import { INTERPRETATION, OBSERVATION_CATEGORY } from './names/systems.ts';

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

type Answers = { readonly [P in Polarity]?: InterpretationCode };

/** A sign is found or not; POS and NEG mean presence and absence of what the code names. */
const ofSign: Answers = { states: 'POS', denies: 'NEG', open: 'IND' };
const ofResult: Answers = { states: 'A', denies: 'N' };

/** Complaints, measures and scores have no interpretation: whether they are normal is not theirs to say. */
const answers: { readonly [T in TableName]?: Answers } = {
  findings: ofSign,
  regions: ofResult,
  testPoints: ofResult,
};

/** Of a sign that is the usual appearance, beside POS or NEG: pupils equal is positive and normal. */
const ofUsual: Answers = { states: 'N', denies: 'A' };

/** The interpretations of what a statement says: of several results, normal where each of them is. */
export function interpretationsOf(
  said: readonly Pick<Said, 'of' | 'polarity' | 'usual'>[],
): InterpretationCode[] {
  const codes = said.flatMap(({ of, polarity }) => answers[of.table]?.[polarity] ?? []);
  const first = codes.find((code) => code !== 'N') ?? codes[0];
  const usual = said.flatMap(({ usual: is, polarity }) => (is ? (ofUsual[polarity] ?? []) : []));
  return [...(first === undefined ? [] : [first]), ...usual];
}

/** POS and NEG are defined for clinical signs too: presence and absence of what the code names. */
export const presenceInterpretation = {
  present: 'POS',
  absent: 'NEG',
  indeterminate: 'IND',
} as const;
