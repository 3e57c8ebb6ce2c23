import { type Details, type ExamDraft, state } from '../../model/builder/draft.ts';
import type { Key, Side } from '../../model/primitive.ts';
import type { ScaleTypes } from '../../terminology/tables/code-types.ts';
import type { ScaleItem, ScaleScore } from './statement.ts';

/** A score on a scale, as the examiner gives it. */
export function scored<S extends keyof ScaleTypes>(
  draft: ExamDraft,
  scale: S,
  version: ScaleTypes[S]['version'],
  score: ScaleTypes[S]['score'],
  details: Details<ScaleScore> & {
    readonly region?: string;
    readonly side?: Side;
    readonly about?: Key;
    readonly items?: readonly ScaleItem[];
  } = {},
): ExamDraft {
  return state(draft, { kind: 'scale-score', scale, version, score, ...details });
}
