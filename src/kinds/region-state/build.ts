import { type Details, type ExamDraft, state } from '../../model/builder/draft.ts';
import type { ExaminedAt, GivenRegion, PlaceAt } from '../../model/builder/place.ts';
import { type ReasonGiven, reasonOf } from '../../model/builder/reason.ts';
import type { Normal, RegionState } from './statement.ts';

/**
 * Adds regions that were examined and found normal. There is no call for "everything normal": what
 * is not listed was not called normal.
 *
 * @param draft The draft so far.
 * @param places Regions, each with its side where it is paired (always the patient's own) and the
 *   methods used.
 * @param details For all places alike: exceptions, examiner, time, note.
 * @returns The draft with one statement for each place.
 * @example
 * draft = normal(draft, [{ region: 'forehead', side: 'both', methods: ['inspection'] }]);
 */
export function normal<const R extends readonly GivenRegion[]>(
  draft: ExamDraft,
  places: { readonly [At in keyof R]: ExaminedAt<R[At]> },
  details: Details<RegionState> & Pick<Normal, 'except'> = {},
): ExamDraft {
  return places.reduce<ExamDraft>(
    (before, place) =>
      state(before, { kind: 'region-state', state: 'normal', ...place, ...details }),
    draft,
  );
}

/**
 * Adds a region that was examined and found abnormal. Say what was found there with
 * {@link present}.
 *
 * @param draft The draft so far.
 * @param place The region, its side where it is paired, and the methods used.
 * @param details Examiner, time, note, where they differ from the exam's.
 * @returns The draft with the statement.
 * @example
 * draft = abnormal(draft, { region: 'forehead', side: 'right', methods: ['inspection'] });
 */
export function abnormal<R extends GivenRegion>(
  draft: ExamDraft,
  place: ExaminedAt<R>,
  details: Details<RegionState> = {},
): ExamDraft {
  return state(draft, { kind: 'region-state', state: 'abnormal', ...place, ...details });
}

/**
 * Adds a region that was examined in part, with what was in the way.
 *
 * @param draft The draft so far.
 * @param place The region, its side where it is paired, and the methods used.
 * @param limit Code of the reason, or the reason with words of the examiner.
 * @param details Examiner, time, note, where they differ from the exam's.
 * @returns The draft with the statement.
 * @example
 * draft = partlyExamined(
 *   draft, { region: 'tm', side: 'left', methods: ['otoscopy'] }, 'unable-wax');
 */
export function partlyExamined<R extends GivenRegion>(
  draft: ExamDraft,
  place: ExaminedAt<R>,
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

/**
 * Adds a region that was not examined, with the reason.
 *
 * @param draft The draft so far.
 * @param place The region, and its side where it is paired.
 * @param reason Code of the reason, or the reason with words of the examiner.
 * @param details Examiner, time, note, where they differ from the exam's.
 * @returns The draft with the statement.
 * @example
 * draft = notExamined(draft, { region: 'eac', side: 'both' }, 'unable-pain');
 */
export function notExamined<R extends GivenRegion>(
  draft: ExamDraft,
  place: PlaceAt<R>,
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

/**
 * Adds a region that the patient does not have, such as after an operation.
 *
 * @param draft The draft so far.
 * @param place The region, and its side where it is paired.
 * @param reason Code of the reason, or the reason with words of the examiner.
 * @param details Examiner, time, note, where they differ from the exam's.
 * @returns The draft with the statement.
 * @example
 * draft = notApplicable(draft, { region: 'globe', side: 'left' }, 'structure-absent');
 */
export function notApplicable<R extends GivenRegion>(
  draft: ExamDraft,
  place: PlaceAt<R>,
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
