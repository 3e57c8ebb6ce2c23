import { type ExamDraft, state } from '../../model/builder/draft.ts';
import type { AddedCode, GivenRegion } from '../../model/builder/place.ts';
import type { SymptomCode } from '../../terminology/tables/code-types.ts';
import type { Symptom } from './statement.ts';

/**
 * Adds a complaint that was asked about, volunteered, or not asked about.
 *
 * @param draft The draft so far.
 * @param code Code of the symptom, or one marked as {@link added}.
 * @param answer What the patient said, or that nobody asked.
 * @param details The place, words of the patient, onset and course.
 * @returns The draft with the statement.
 * @example
 * draft = symptom(draft, 'sym-ear.pain', 'yes');
 */
export function symptom(
  draft: ExamDraft,
  code: SymptomCode | AddedCode,
  answer: Symptom['answer'],
  details: Partial<Omit<Symptom, 'kind' | 'symptom' | 'answer' | 'region'>> & {
    readonly region?: GivenRegion;
  } = {},
): ExamDraft {
  return state(draft, { kind: 'symptom', symptom: code, answer, ...details });
}
