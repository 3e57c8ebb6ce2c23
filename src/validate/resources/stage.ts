import type { Stage } from '../walk/stage.ts';
import { checkAnswers } from './answers.ts';

/** The stage of rules that hold for one type of resource, beyond its elements and invariants. */
export const resourceStage: Stage = {
  objects: {
    QuestionnaireResponse: checkAnswers,
  },
};
