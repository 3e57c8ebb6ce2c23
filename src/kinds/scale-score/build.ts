import { type Details, type ExamDraft, state } from '../../model/builder/draft.ts';
import type { GivenRegion } from '../../model/builder/place.ts';
import type { Key, Side } from '../../model/primitive.ts';
import type { ScaleTypes } from '../../terminology/tables/code-types.ts';
import type { ScaleItem, ScaleScore } from './statement.ts';

/**
 * Adds a score on a scale, as the examiner gives it. Nothing is computed from it.
 *
 * @param draft The draft so far.
 * @param scale Code of the scale.
 * @param version Version of the scale.
 * @param score A number within the scale, or one of its grades.
 * @param details The place or the statement that is scored; single items; examiner, time, note.
 * @returns The draft with the statement.
 * @example
 * draft = scored(draft, '7pcl', 'weighted-2013', 3);
 */
export function scored<S extends keyof ScaleTypes>(
  draft: ExamDraft,
  scale: S,
  version: ScaleTypes[S]['version'],
  score: ScaleTypes[S]['score'],
  details: Details<ScaleScore> & {
    readonly region?: GivenRegion;
    readonly side?: Side;
    readonly about?: Key;
    readonly items?: readonly ScaleItem[];
  } = {},
): ExamDraft {
  return state(draft, { kind: 'scale-score', scale, version, score, ...details });
}
