import { resultChange, whenConfirmed } from '../../checks/compare/verdicts.ts';
import { coverTest } from '../../checks/coverage/marks.ts';
import type { KindCheck } from '../facets/check.ts';
import type { Movement } from './statement.ts';

export const movementCheck: KindCheck<Movement> = {
  cover: (movement, marker) => {
    coverTest(marker, movement, movement.grade, ['motor-test', 'function-test']);
  },
  comparison: {
    change: whenConfirmed(({ statement: now }, { statement: before }, { catalogue }) =>
      resultChange('testResults', now.grade, before.grade, catalogue),
    ),
  },
};
