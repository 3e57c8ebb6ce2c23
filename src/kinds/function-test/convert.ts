import {
  isState,
  type Problem,
  type Reading,
  reasonOf,
  unknownWord,
} from '../../convert/build/built.ts';
import type { FunctionTestTarget, MovementTarget } from '../../convert/mapping/target.ts';
import type { Side } from '../../model/primitive.ts';
import { notDone, type StatementConversion, type TargetConversion } from '../facets/conversion.ts';
import type { FunctionTest } from './statement.ts';

export const functionTestConversion: StatementConversion<FunctionTest> = {
  about: ({ test }) => [test],
};

/** What targets of movements and of functions share: the row of the test says it all. */
export const testTarget: Omit<TargetConversion<FunctionTestTarget | MovementTarget>, 'build'> = {
  codes: ({ test }) => [['testPoints', test, 'test']],
  home: ({ test }, catalogue) => catalogue.testPoints.get(test)?.region,
  laterality: ({ test }, catalogue) => catalogue.testPoints.get(test)?.laterality,
  meanings: ({ test }, catalogue) =>
    (catalogue.testPoints.get(test)?.results ?? []).filter(
      (code) => !catalogue.testResults.get(code)?.untested,
    ),
  states: notDone,
};

export const functionTestTarget: TargetConversion<FunctionTestTarget> = {
  ...testTarget,
  build: ({ target }, reading, plan) => {
    const answer = testAnswer(target.test, reading, plan.catalogue.testPoints);
    if ('problem' in answer) return answer;
    const { code: result, ...more } = answer;
    return { statements: [{ kind: 'function-test', test: target.test, result, ...more }] };
  },
};

/** The result of a test with side, time and the reason where there is none. */
export function testAnswer(
  test: string,
  { meaning, side, at }: Reading,
  points: ReadonlyMap<string, { readonly results?: readonly string[] }>,
): Problem | { code: string; side?: Side; at?: string; reason?: { code: string; text?: string } } {
  const results = points.get(test)?.results ?? [];
  const shared = { ...(side !== undefined && { side }), ...(at !== undefined && { at }) };
  if (isState(meaning)) return { code: 'not-tested', ...shared, reason: reasonOf(meaning) };
  if (meaning === undefined || !results.includes(meaning)) {
    return unknownWord({ reason: 'test', code: test });
  }
  return { code: meaning, ...shared };
}
