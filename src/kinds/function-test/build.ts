import { type Details, type ExamDraft, state } from '../../model/builder/draft.ts';
import type { Sides } from '../../model/builder/place.ts';
import { type ReasonGiven, reasonOf } from '../../model/builder/reason.ts';
import type { Side } from '../../model/primitive.ts';
import type { FunctionTestTypes } from '../../terminology/tables/code-types.ts';
import type { FunctionTest } from './statement.ts';

/** What can be said of a test besides its answer. */
export type TestDetails = Details<FunctionTest> & { readonly reason?: ReasonGiven };

/**
 * Adds a reflex, hearing, swallowing or similar test, and its result.
 *
 * @param draft The draft so far.
 * @param test Code of the test.
 * @param result A result that this test takes.
 * @param details The side where the test has one; the reason where it was not made; examiner, time,
 *   note.
 * @returns The draft with the statement.
 * @example
 * draft = tested(draft, 'rinne', 'air-better', { side: 'left' });
 */
export function tested<T extends keyof FunctionTestTypes>(
  draft: ExamDraft,
  test: T,
  result: FunctionTestTypes[T]['result'],
  details: Sides<FunctionTestTypes[T]> & TestDetails,
): ExamDraft {
  const { reason, ...given }: TestDetails & { readonly side?: Side } = details;
  return state(draft, {
    kind: 'function-test',
    test,
    result,
    ...(reason !== undefined && { reason: reasonOf(reason) }),
    ...given,
  });
}
