import type { Code, Side } from '../../model/primitive.ts';
import type { Reason, StatementBase } from '../base.ts';
import { atTestPoint, type Meaning, resultPolarity } from '../meaning.ts';

/** A reflex, hearing, swallowing or similar test, and its result. */
export interface FunctionTest extends StatementBase {
  readonly kind: 'function-test';
  /** Code of terminology/test-points.json, group `function`. */
  readonly test: Code;
  readonly side?: Side;
  /** Code of the test's own list of results. */
  readonly result: Code;
  readonly reason?: Reason;
}

export const functionTestMeaning: Meaning<FunctionTest> = {
  subject: ({ test }) => ({ table: 'testPoints', code: test }),
  standing: ({ test, side }, catalogue) => atTestPoint(test, side, catalogue),
  said: ({ test, result }, catalogue) => [
    {
      polarity: resultPolarity(catalogue.testResults.get(result)),
      of: { table: 'testPoints', code: test },
    },
  ],
};
