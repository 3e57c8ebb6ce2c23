import { type Details, type ExamDraft, state } from '../../model/builder/draft.ts';
import { type ReasonGiven, reasonOf } from '../../model/builder/reason.ts';
import type { SensationPointTypes } from '../../terminology/tables/code-types.ts';
import type { SensationComparison } from './statement.ts';

/** What the patient felt when both sides were touched alike. */
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
