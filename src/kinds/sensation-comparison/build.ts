import { type Details, type ExamDraft, state } from '../../model/builder/draft.ts';
import { type ReasonGiven, reasonOf } from '../../model/builder/reason.ts';
import type { SensationPointTypes } from '../../terminology/tables/code-types.ts';
import type { SensationComparison } from './statement.ts';

/**
 * Adds what the patient felt when both sides were touched alike.
 *
 * @param draft The draft so far.
 * @param point Code of the test point.
 * @param modality What was tried, such as `pinprick`; each point has its own list.
 * @param result Equal, or the side that felt less or different.
 * @param details The reason where it was not tested; examiner, time, note.
 * @returns The draft with the statement.
 * @example
 * draft = comparedSides(draft, 'v1', 'pinprick', 'equal');
 */
export function comparedSides<P extends keyof SensationPointTypes>(
  draft: ExamDraft,
  point: P,
  modality: SensationPointTypes[P]['modality'],
  result: SensationComparison['result'],
  { reason, ...details }: Details<SensationComparison> & { readonly reason?: ReasonGiven } = {},
): ExamDraft {
  return state(draft, {
    kind: 'sensation-comparison',
    point,
    modality,
    result,
    ...(reason !== undefined && { reason: reasonOf(reason) }),
    ...details,
  });
}
