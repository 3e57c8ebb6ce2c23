import type { Path } from '../../issues/path.ts';
import type { Code, Side } from '../../model/primitive.ts';
import type { RuleContext } from '../../model/rules/rule.ts';
import type { Reason, StatementBase } from '../facets/base.ts';
import type { Form } from '../facets/form.ts';
import { atTestPoint, type Meaning, resultPolarity } from '../facets/meaning.ts';

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

export const functionTestForm: Form<FunctionTest> = {
  codes: ({ test, result }) => [
    { table: 'testPoints', code: test, path: ['test'] },
    { table: 'testResults', code: result, path: ['result'] },
  ],
  answers: (statement, path, context) => {
    const { kind, test, result } = statement;
    const isOfKind = context.catalogue.testPoints.get(test)?.group === 'function';
    checkTest({ kind, test, isOfKind, answer: ['result', result] }, path, context);
  },
  reasons: ({ reason }) => [{ reason, path: [] }],
};

interface TestAnswer {
  readonly kind: string;
  readonly test: Code;
  /** The test belongs to the kind of statement that names it. */
  readonly isOfKind: boolean;
  readonly answer: readonly [property: string, code: Code];
}

/** Reports a test of another kind, and an answer that the test does not have. */
export function checkTest(
  { kind, test, isOfKind, answer: [property, answer] }: TestAnswer,
  path: Path,
  { catalogue, nearest, report }: RuleContext,
): void {
  const point = catalogue.testPoints.get(test);
  if (point === undefined) return;
  if (!isOfKind) {
    report(
      'unknown-code',
      [...path, 'test'],
      { reason: 'other-kind-of-test', kind },
      { value: test },
    );
    return;
  }
  if (catalogue.testResults.has(answer) && !point.results?.includes(answer)) {
    report(
      'unknown-code',
      [...path, property],
      {
        reason: 'test-result',
        codes: point.results,
        near: nearest(answer, point.results ?? []),
      },
      { value: answer },
    );
  }
}
