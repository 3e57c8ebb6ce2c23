import { answerColumns, reasonColumns, resultState } from '../../flat/answer.ts';
import type { Flat } from '../facets/flat.ts';
import type { Sensation } from './statement.ts';

export const sensationFlat: Flat<Sensation> = {
  answers: ({ results }, polarities, catalogue) =>
    results.map(({ modality, result, reason }, at) => ({
      part: modality,
      state: resultState(polarities[at]),
      ...answerColumns(catalogue, 'sensationResults', result),
      ...reasonColumns(reason),
    })),
};
