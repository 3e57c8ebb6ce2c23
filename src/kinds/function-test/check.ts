import { resultChange, whenConfirmed } from '../../checks/compare/verdicts.ts';
import { coverAsMeasure, coverTest } from '../../checks/coverage/marks.ts';
import type { KindCheck } from '../facets/check.ts';
import type { FunctionTest } from './statement.ts';

export const functionTestCheck: KindCheck<FunctionTest> = {
  cover: (test, marker) => {
    const sides = coverTest(marker, test, test.result, ['function-test', 'reflex']);
    coverAsMeasure(marker, test, test.test, sides);
  },
  comparison: {
    change: whenConfirmed(({ statement: now }, { statement: before }, { catalogue }) =>
      resultChange('testResults', now.result, before.result, catalogue),
    ),
  },
};
