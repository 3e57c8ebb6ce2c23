import type {
  AttributeCode,
  FindingCode,
  FunctionTestTypes,
  MeasureConditionCode,
  MeasureTypes,
  MovementTypes,
  ReasonCode,
  ScaleTypes,
  SensationPointTypes,
  SensationResultCode,
  SymptomCode,
} from '../../terminology/tables/code-types.ts';
import type { Key, Side, Text } from '../primitive.ts';
import type {
  Attribute,
  Finding,
  FunctionTest,
  Image,
  Measurement,
  Movement,
  Note,
  Reason,
  RegionState,
  ScaleItem,
  ScaleScore,
  Sensation,
  SensationComparison,
  Symptom,
} from '../statement.ts';
import { type Details, type ExamDraft, state } from './draft.ts';
import type { AddedCode, ExaminedPlace, MeasurePlace, Place, Sided } from './place.ts';

/** A reason code, or the code with the words used. */
export type ReasonGiven =
  | ReasonCode
  | AddedCode
  | { readonly code: ReasonCode | AddedCode; readonly text: Text };

type FindingDetails = Details<Finding> & {
  readonly tracking?: Key;
  readonly certainty?: 'suspected' | 'confirmed';
  /** Several values of one attribute stand in a list. */
  readonly attributes?: Readonly<
    Partial<Record<AttributeCode, Attribute['value'] | readonly Attribute['value'][]>>
  >;
};

/** A sign that was found. */
export function present(
  draft: ExamDraft,
  finding: FindingCode | AddedCode,
  place: Place,
  { attributes, ...details }: FindingDetails = {},
): ExamDraft {
  const listed = Object.entries(attributes ?? {}).flatMap(([attribute, given]) =>
    [given].flat().map((value) => ({ attribute, value })),
  );
  return state(draft, {
    kind: 'finding',
    finding,
    presence: 'present',
    ...place,
    ...details,
    ...(listed.length > 0 && { attributes: listed }),
  });
}

/** A sign that was looked for and not found. */
export function absent(
  draft: ExamDraft,
  finding: FindingCode | AddedCode,
  place: Place,
  details: Details<Finding> & { readonly tracking?: Key } = {},
): ExamDraft {
  return state(draft, { kind: 'finding', finding, presence: 'absent', ...place, ...details });
}

/** A sign that was looked for and could not be decided. */
export function indeterminate(
  draft: ExamDraft,
  finding: FindingCode | AddedCode,
  place: Place,
  details: Details<Finding> = {},
): ExamDraft {
  return state(draft, {
    kind: 'finding',
    finding,
    presence: 'indeterminate',
    ...place,
    ...details,
  });
}

/**
 * Regions examined and found normal, each with its methods. There is no call for "everything
 * normal": what is not listed here was not called normal.
 */
export function normal(
  draft: ExamDraft,
  places: readonly ExaminedPlace[],
  details: Details<RegionState> = {},
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

type ModalityAnswer =
  | SensationResultCode
  | { readonly result: SensationResultCode; readonly reason: ReasonGiven };

/** Sensation at one point and side: a result for each modality that was tried or left out. */
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

type Sides<L extends { readonly laterality: 'paired' | 'crossing' | 'midline' | 'whole' }> = Sided<
  L['laterality']
>;

type TestDetails = Details<Movement | FunctionTest> & { readonly reason?: ReasonGiven };

/** A movement that was asked for, and its grade. */
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

/** A reflex, hearing, swallowing or similar test, and its result. */
export function tested<T extends keyof FunctionTestTypes>(
  draft: ExamDraft,
  test: T,
  result: FunctionTestTypes[T]['result'],
  details: Sides<FunctionTestTypes[T]> & TestDetails,
): ExamDraft {
  const { reason, ...given }: TestDetails & { readonly side?: Side } = details;
  return state(draft, {
    kind: 'function-test',
    test,
    result,
    ...(reason !== undefined && { reason: reasonOf(reason) }),
    ...given,
  });
}

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

/** A complaint that was asked about, told unasked, or not asked. */
export function symptom(
  draft: ExamDraft,
  code: SymptomCode | AddedCode,
  answer: Symptom['answer'],
  details: Partial<Omit<Symptom, 'kind' | 'symptom' | 'answer'>> = {},
): ExamDraft {
  return state(draft, { kind: 'symptom', symptom: code, answer, ...details });
}

/** The examiner's words, verbatim, on a region or on the whole exam. */
export function noted(
  draft: ExamDraft,
  text: Text,
  details: Details<Note> & { readonly region?: string; readonly side?: Side } = {},
): ExamDraft {
  return state(draft, { kind: 'note', text, ...details });
}

/** A picture that was taken or is referred to. */
export function pictured(
  draft: ExamDraft,
  image: Omit<Image, 'kind' | 'key'> & { readonly key?: Key },
): ExamDraft {
  return state(draft, { kind: 'image', ...image });
}

function reasonOf(given: ReasonGiven): Reason {
  return typeof given === 'string' ? { code: given } : given;
}
