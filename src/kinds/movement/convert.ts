import type { MovementTarget } from '../../convert/mapping/target.ts';
import type { StatementConversion, TargetConversion } from '../facets/conversion.ts';
import { testAnswer, testTarget } from '../function-test/convert.ts';
import type { Movement } from './statement.ts';

export const movementConversion: StatementConversion<Movement> = { about: ({ test }) => [test] };

export const movementTarget: TargetConversion<MovementTarget> = {
  ...testTarget,
  build: ({ target }, reading, plan) => {
    const answer = testAnswer(target.test, reading, plan.catalogue.testPoints);
    if ('problem' in answer) return answer;
    const { code: grade, ...more } = answer;
    return { statements: [{ kind: 'movement', test: target.test, grade, ...more }] };
  },
};
