import type { FhirRelease } from '../../corpus.ts';
import type { Json } from '../places.ts';
import { answerCases } from './questionnaires/answers.ts';
import { chosenAnswerCases } from './questionnaires/chosen-answers.ts';
import { formCases } from './questionnaires/forms.ts';

/** Questionnaires, and answers to a contained one, sound and broken, by name. */
export function questionnaireCases(version: FhirRelease): Record<string, Json> {
  return { ...formCases(version), ...answerCases(version), ...chosenAnswerCases(version) };
}
