import { type ExamDraft, state } from '../../model/builder/draft.ts';
import type { AddedCode } from '../../model/builder/place.ts';
import type { SymptomCode } from '../../terminology/tables/code-types.ts';
import type { Symptom } from './statement.ts';

/** A complaint that was asked about, told unasked, or not asked. */
export function symptom(
  draft: ExamDraft,
  code: SymptomCode | AddedCode,
  answer: Symptom['answer'],
  details: Partial<Omit<Symptom, 'kind' | 'symptom' | 'answer'>> = {},
): ExamDraft {
  return state(draft, { kind: 'symptom', symptom: code, answer, ...details });
}
