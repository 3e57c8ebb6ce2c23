import { type Details, type ExamDraft, state } from '../../model/builder/draft.ts';
import type { GivenRegion, MeasurePlace } from '../../model/builder/place.ts';
import { type ReasonGiven, reasonOf } from '../../model/builder/reason.ts';
import type { MeasureConditionCode, MeasureTypes } from '../../terminology/tables/code-types.ts';
import type { Measurement } from './statement.ts';

type MeasurementDetails = Details<Measurement> &
  Partial<Pick<Measurement, 'readings' | 'convention' | 'comparator' | 'about' | 'estimated'>> & {
    readonly conditions?: readonly [MeasureConditionCode, ...MeasureConditionCode[]];
  };

/**
 * Adds a quantity that was read.
 *
 * @param draft The draft so far.
 * @param measure Code of the measure.
 * @param place The region of the measure, its side where it is paired, and the method.
 * @param value Decimal text with the precision as read: `'4.0'` is not `'4'`.
 * @param unit UCUM code of a unit that the measure takes, such as `mm`.
 * @param details Single readings, instrument, examiner, time, note.
 * @returns The draft with the statement.
 * @example
 * const lid = { region: 'lid-upper', side: 'left', methods: ['measurement'] } as const;
 * draft = measured(draft, 'pfh', lid, '9.0', 'mm');
 * @see https://ucum.org/ucum
 */
export function measured<M extends keyof MeasureTypes, R extends GivenRegion>(
  draft: ExamDraft,
  measure: M,
  place: MeasurePlace<M, R>,
  value: string,
  unit: MeasureTypes[M]['unit'],
  details: MeasurementDetails = {},
): ExamDraft {
  return state(draft, { kind: 'measurement', measure, ...place, value, unit, ...details });
}

/**
 * Adds a measurement that was tried and gave no usable value.
 *
 * @param draft The draft so far.
 * @param measure Code of the measure.
 * @param place The region of the measure, its side where it is paired, and the method.
 * @param unit UCUM code of a unit that the measure takes, such as `mm`.
 * @param reason Code of the reason, or the reason with words of the examiner.
 * @param details Instrument, examiner, time, note.
 * @returns The draft with the statement.
 * @example
 * draft = unusable(draft, 'icd', { region: 'eyes' }, 'mm', 'reading-unusable');
 */
export function unusable<M extends keyof MeasureTypes, R extends GivenRegion>(
  draft: ExamDraft,
  measure: M,
  place: MeasurePlace<M, R>,
  unit: MeasureTypes[M]['unit'],
  reason: ReasonGiven,
  details: Details<Measurement> = {},
): ExamDraft {
  return state(draft, {
    kind: 'measurement',
    measure,
    ...place,
    unit,
    unusable: reasonOf(reason),
    ...details,
  });
}
