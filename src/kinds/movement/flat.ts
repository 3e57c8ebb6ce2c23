import { answerColumns, reasonColumns, resultState } from '../../flat/answer.ts';
import type { Flat } from '../facets/flat.ts';
import type { Movement } from './statement.ts';

export const movementFlat: Flat<Movement> = {
  answers: ({ grade, reason, synkinesis }, [polarity], catalogue) => [
    {
      state: resultState(polarity),
      ...answerColumns(catalogue, 'testResults', grade),
      ...reasonColumns(reason),
      ...(synkinesis !== undefined && { attributes: `synkinesis=${synkinesis}` }),
    },
  ],
};
