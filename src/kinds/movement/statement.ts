import type { Code, Side } from '../../model/primitive.ts';
import type { Reason, StatementBase } from '../base.ts';
import { atTestPoint, type Meaning, resultPolarity } from '../meaning.ts';

/** A movement asked for, and its grade: facial, jaw, neck, tongue, palate, shoulder. */
export interface Movement extends StatementBase {
  readonly kind: 'movement';
  /** Code of terminology/test-points.json, group `facial-movement` or `movement`. */
  readonly test: Code;
  readonly side?: Side;
  /** Code of the test's own list of grades. */
  readonly grade: Code;
  readonly synkinesis?: boolean;
  readonly reason?: Reason;
}

export const movementMeaning: Meaning<Movement> = {
  subject: ({ test }) => ({ table: 'testPoints', code: test }),
  standing: ({ test, side }, catalogue) => atTestPoint(test, side, catalogue),
  said: ({ test, grade }, catalogue) => [
    {
      polarity: resultPolarity(catalogue.testResults.get(grade)),
      of: { table: 'testPoints', code: test },
    },
  ],
};
