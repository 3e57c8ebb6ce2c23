import { answerColumns, reasonColumns, resultState } from '../../flat/answer.ts';
import type { Flat } from '../facets/flat.ts';
import type { FunctionTest } from './statement.ts';

export const functionTestFlat: Flat<FunctionTest> = {
  answers: ({ result, reason }, [polarity], catalogue) => [
    {
      state: resultState(polarity),
      ...answerColumns(catalogue, 'testResults', result),
      ...reasonColumns(reason),
    },
  ],
};
