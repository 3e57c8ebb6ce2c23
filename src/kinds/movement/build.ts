import { type ExamDraft, state } from '../../model/builder/draft.ts';
import type { Sides } from '../../model/builder/place.ts';
import { reasonOf } from '../../model/builder/reason.ts';
import type { Side } from '../../model/primitive.ts';
import type { MovementTypes } from '../../terminology/tables/code-types.ts';
import type { TestDetails } from '../function-test/build.ts';

/** A movement that was asked for, and its grade. */
export function moved<T extends keyof MovementTypes>(
  draft: ExamDraft,
  test: T,
  grade: MovementTypes[T]['result'],
  details: Sides<MovementTypes[T]> & TestDetails & { readonly synkinesis?: boolean },
): ExamDraft {
  const {
    reason,
    ...given
  }: TestDetails & { readonly side?: Side; readonly synkinesis?: boolean } = details;
  return state(draft, {
    kind: 'movement',
    test,
    grade,
    ...(reason !== undefined && { reason: reasonOf(reason) }),
    ...given,
  });
}
