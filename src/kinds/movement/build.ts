import { type ExamDraft, state } from '../../model/builder/draft.ts';
import type { Sides } from '../../model/builder/place.ts';
import { reasonOf } from '../../model/builder/reason.ts';
import type { Side } from '../../model/primitive.ts';
import type { MovementTypes } from '../../terminology/tables/code-types.ts';
import type { TestDetails } from '../function-test/build.ts';

/**
 * Adds a movement that was asked for, and its grade.
 *
 * @param draft The draft so far.
 * @param test Code of the movement.
 * @param grade A grade that this movement takes.
 * @param details The side where the movement has one; synkinesis; the reason where it was not
 *   tested; examiner, time, note.
 * @returns The draft with the statement.
 * @example
 * draft = moved(draft, 'zygomaticus', 'normal', { side: 'left' });
 */
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
