import { type Details, type ExamDraft, state } from '../../model/builder/draft.ts';
import type { Sides } from '../../model/builder/place.ts';
import { type ReasonGiven, reasonOf } from '../../model/builder/reason.ts';
import type { Side } from '../../model/primitive.ts';
import type { FunctionTestTypes } from '../../terminology/tables/code-types.ts';
import type { FunctionTest } from './statement.ts';

/** What can be said of a test besides its answer. */
export type TestDetails = Details<FunctionTest> & { readonly reason?: ReasonGiven };

/** A reflex, hearing, swallowing or similar test, and its result. */
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
