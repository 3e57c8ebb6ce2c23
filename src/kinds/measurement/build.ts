import { type Details, type ExamDraft, state } from '../../model/builder/draft.ts';
import type { MeasurePlace } from '../../model/builder/place.ts';
import { type ReasonGiven, reasonOf } from '../../model/builder/reason.ts';
import type { MeasureConditionCode, MeasureTypes } from '../../terminology/tables/code-types.ts';
import type { Measurement } from './statement.ts';

type MeasurementDetails = Details<Measurement> &
  Partial<Pick<Measurement, 'readings' | 'convention' | 'comparator' | 'about' | 'estimated'>> & {
    readonly conditions?: readonly [MeasureConditionCode, ...MeasureConditionCode[]];
  };

/** A quantity. `value` is decimal text with the precision as read: `'4.0'` is not `'4'`. */
export function measured<M extends keyof MeasureTypes>(
  draft: ExamDraft,
  measure: M,
  place: MeasurePlace<M>,
  value: string,
  unit: MeasureTypes[M]['unit'],
  details: MeasurementDetails = {},
): ExamDraft {
  return state(draft, { kind: 'measurement', measure, ...place, value, unit, ...details });
}

/** A measurement that was tried and gave no usable value. */
export function unusable<M extends keyof MeasureTypes>(
  draft: ExamDraft,
  measure: M,
  place: MeasurePlace<M>,
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
