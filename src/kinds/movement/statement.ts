import type { Code, Side } from '../../model/primitive.ts';
import type { Reason, StatementBase } from '../facets/base.ts';
import type { Form } from '../facets/form.ts';
import { atTestPoint, type Meaning, resultPolarity } from '../facets/meaning.ts';
import { checkTest } from '../function-test/statement.ts';

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

export const movementForm: Form<Movement> = {
  codes: ({ test, grade }) => [
    { table: 'testPoints', code: test, path: ['test'] },
    { table: 'testResults', code: grade, path: ['grade'] },
  ],
  answers: (statement, path, context) => {
    const { kind, test, grade } = statement;
    const group = context.catalogue.testPoints.get(test)?.group;
    const isOfKind = group === 'movement' || group === 'facial-movement';
    checkTest({ kind, test, isOfKind, answer: ['grade', grade] }, path, context);
  },
  reasons: ({ reason }) => [{ reason, path: [] }],
};
