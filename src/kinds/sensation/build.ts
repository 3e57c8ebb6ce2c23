import { type Details, type ExamDraft, state } from '../../model/builder/draft.ts';
import { type ReasonGiven, reasonOf } from '../../model/builder/reason.ts';
import type {
  SensationPointTypes,
  SensationResultCode,
} from '../../terminology/tables/code-types.ts';
import type { Sensation } from './statement.ts';

type ModalityAnswer =
  | SensationResultCode
  | { readonly result: SensationResultCode; readonly reason: ReasonGiven };

/**
 * Adds what was felt at one point and side.
 *
 * @param draft The draft so far.
 * @param point Code of the test point.
 * @param side The patient's own side, or midline.
 * @param answers A result for each modality that was tried; for one left out, the result
 *   `not-tested` with its reason.
 * @param details Whether the eyes were closed; examiner, time, note.
 * @returns The draft with the statement.
 * @example
 * draft = sensation(draft, 'v1', 'left', { 'light-touch': 'normal' });
 */
export function sensation<P extends keyof SensationPointTypes>(
  draft: ExamDraft,
  point: P,
  side: 'right' | 'left' | 'midline',
  answers: Readonly<Partial<Record<SensationPointTypes[P]['modality'], ModalityAnswer>>>,
  details: Details<Sensation> & { readonly eyesClosed?: boolean } = {},
): ExamDraft {
  const given = Object.entries<ModalityAnswer | undefined>(answers);
  const results = given.flatMap(([modality, answer]) => {
    if (answer === undefined) return [];
    if (typeof answer === 'string') return [{ modality, result: answer }];
    return [{ modality, result: answer.result, reason: reasonOf(answer.reason) }];
  });
  return state(draft, { kind: 'sensation', point, side, results, ...details });
}
