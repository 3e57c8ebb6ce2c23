import { type Details, type ExamDraft, state } from '../../model/builder/draft.ts';
import type { ExaminedPlace, Place } from '../../model/builder/place.ts';
import { type ReasonGiven, reasonOf } from '../../model/builder/reason.ts';
import type { Normal, RegionState } from './statement.ts';

/**
 * Regions examined and found normal, each with its methods. There is no call for "everything
 * normal": what is not listed here was not called normal.
 */
export function normal(
  draft: ExamDraft,
  places: readonly ExaminedPlace[],
  details: Details<RegionState> & Pick<Normal, 'except'> = {},
): ExamDraft {
  return places.reduce(
    (before, place) =>
      state(before, { kind: 'region-state', state: 'normal', ...place, ...details }),
    draft,
  );
}

/** A region examined and found abnormal; say what was found with {@link present}. */
export function abnormal(
  draft: ExamDraft,
  place: ExaminedPlace,
  details: Details<RegionState> = {},
): ExamDraft {
  return state(draft, { kind: 'region-state', state: 'abnormal', ...place, ...details });
}

/** A region examined in part, with what was in the way. */
export function partlyExamined(
  draft: ExamDraft,
  place: ExaminedPlace,
  limit: ReasonGiven,
  details: Details<RegionState> = {},
): ExamDraft {
  return state(draft, {
    kind: 'region-state',
    state: 'partial',
    limit: reasonOf(limit),
    ...place,
    ...details,
  });
}

/** A region that was not examined, with the reason. */
export function notExamined(
  draft: ExamDraft,
  place: Place,
  reason: ReasonGiven,
  details: Details<RegionState> = {},
): ExamDraft {
  return state(draft, {
    kind: 'region-state',
    state: 'not-examined',
    reason: reasonOf(reason),
    ...place,
    ...details,
  });
}

/** A region that is not there to be examined. */
export function notApplicable(
  draft: ExamDraft,
  place: Place,
  reason: ReasonGiven,
  details: Details<RegionState> = {},
): ExamDraft {
  return state(draft, {
    kind: 'region-state',
    state: 'not-applicable',
    reason: reasonOf(reason),
    ...place,
    ...details,
  });
}
