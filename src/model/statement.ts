import type {
  Code,
  Coding,
  DateTime,
  Decimal,
  Key,
  Quantity,
  Side,
  Text,
  UnitCode,
  Uri,
} from './primitive.ts';

/** One thing said in an exam. A region or test without a statement was never spoken of. */
export type Statement =
  | Finding
  | RegionState
  | Sensation
  | SensationComparison
  | Movement
  | FunctionTest
  | Measurement
  | ScaleScore
  | Symptom
  | Note
  | Image;

export type StatementKind = Statement['kind'];

export interface StatementBase {
  /** Unique in the exam. All ids of exported resources derive from it, so keep it when re-sending. */
  readonly key: Key;
  /** When this was done, where it differs from the time of the exam. */
  readonly at?: DateTime;
  /** Key of the examiner, where it is not the first of the exam. */
  readonly examiner?: Key;
  /**
   * Keys of the instruments used.
   * @minItems 1
   */
  readonly instruments?: readonly Key[];
  /** The examiner's words, verbatim; never parsed. */
  readonly note?: Text;
  /**
   * Codes of other systems for what is stated, as the caller gives them.
   * @minItems 1
   */
  readonly codings?: readonly Coding[];
  /**
   * Set when the statement was taken over from an earlier exam and not made anew. It keeps its own
   * time; `confirmed` says that the examiner looked again and stands by it.
   */
  readonly carried?: Carried;
}

export interface Carried {
  readonly exam: Key;
  readonly statement: Key;
  readonly at: DateTime;
  readonly confirmed: boolean;
}

interface Sited extends StatementBase {
  /** Code of terminology/regions.json. */
  readonly region: Code;
  /** Required where the region is paired. */
  readonly side?: Side;
  /** Where within the region, in the examiner's words: "12 mm below the lateral canthus". */
  readonly place?: Text;
}

interface Examined extends Sited {
  /**
   * Codes of terminology/methods.json.
   * @minItems 1
   */
  readonly methods?: readonly Code[];
}

export type Presence = 'present' | 'absent' | 'indeterminate';

/** A sign that was looked for: found, not found (a pertinent negative), or not to be decided. */
export interface Finding extends Examined {
  readonly kind: 'finding';
  /** Code of terminology/findings.json. */
  readonly finding: Code;
  readonly presence: Presence;
  /**
   * How sure the examiner is of a finding that is present. Unsaid means as stated.
   * A suspected disease is exported as suspected, never as present.
   */
  readonly certainty?: 'suspected' | 'confirmed';
  /**
   * Attributes of a finding that is present.
   * @minItems 1
   */
  readonly attributes?: readonly Attribute[];
  /** Identity of the lesion, node or lump over exams: the same value next year means the same thing. */
  readonly tracking?: Key;
}

export interface Attribute {
  /** Code of terminology/attributes.json. */
  readonly attribute: Code;
  /** A code of the attribute's own list, yes or no, a count, or a quantity, as the attribute asks. */
  readonly value: Code | boolean | Count | Quantity;
}

/**
 * @asType integer
 * @minimum 0
 * @maximum 100000
 */
export type Count = number;

/** What became of a region as a whole. */
export type RegionState = Normal | Abnormal | Partial | NotExamined | NotApplicable;

interface RegionStateBase extends Examined {
  readonly kind: 'region-state';
}

/** Examined with these methods, and no abnormality found. */
export interface Normal extends RegionStateBase {
  readonly state: 'normal';
  /** @minItems 1 */
  readonly methods: readonly Code[];
}

/** Examined with these methods; what was found stands in findings of its own. */
export interface Abnormal extends RegionStateBase {
  readonly state: 'abnormal';
  /** @minItems 1 */
  readonly methods: readonly Code[];
}

/** Examined in part; `limit` says what was in the way. */
export interface Partial extends RegionStateBase {
  readonly state: 'partial';
  /** @minItems 1 */
  readonly methods: readonly Code[];
  readonly limit: Reason;
}

export interface NotExamined extends RegionStateBase {
  readonly state: 'not-examined';
  readonly reason: Reason;
}

/** The structure is not there: an eye or a larynx removed. */
export interface NotApplicable extends RegionStateBase {
  readonly state: 'not-applicable';
  readonly reason: Reason;
}

/** Why something was not done, or only in part. */
export interface Reason {
  /** Code of terminology/reasons.json. */
  readonly code: Code;
  readonly text?: Text;
}

/** Skin sensation at one point and side, one result for each modality tried. */
export interface Sensation extends StatementBase {
  readonly kind: 'sensation';
  /** Code of terminology/test-points.json, group `sensation`. */
  readonly point: Code;
  readonly side: 'right' | 'left' | 'midline';
  /** @minItems 1 */
  readonly results: readonly ModalityResult[];
  readonly eyesClosed?: boolean;
}

export interface ModalityResult {
  /** Code of terminology/modalities.json, for example `light-touch` or `pinprick`. */
  readonly modality: Code;
  /** Code of terminology/sensation-results.json. */
  readonly result: Code;
  /** Needed with the results `not-tested` and `unable`. */
  readonly reason?: Reason;
}

/** What the patient felt when both sides were touched alike. Not the sum of two results. */
export interface SensationComparison extends StatementBase {
  readonly kind: 'sensation-comparison';
  readonly point: Code;
  readonly modality: Code;
  readonly result: 'equal' | 'right-less' | 'left-less' | 'not-compared';
  readonly reason?: Reason;
}

/** A movement asked for, and its grade: facial, jaw, neck, tongue, palate, shoulder. */
export interface Movement extends StatementBase {
  readonly kind: 'movement';
  /** Code of terminology/test-points.json, group `facial-movement` or `movement`. */
  readonly test: Code;
  readonly side?: Side;
  /** Code of the test's own list of grades. */
  readonly grade: Code;
  readonly synkinesis?: boolean;
  readonly reason?: Reason;
}

/** A reflex, hearing, swallowing or similar test, and its result. */
export interface FunctionTest extends StatementBase {
  readonly kind: 'function-test';
  /** Code of terminology/test-points.json, group `function`. */
  readonly test: Code;
  readonly side?: Side;
  /** Code of the test's own list of results. */
  readonly result: Code;
  readonly reason?: Reason;
}

/** A quantity, with every reading that was taken. */
export interface Measurement extends Examined {
  readonly kind: 'measurement';
  /** Code of terminology/measures.json. */
  readonly measure: Code;
  /** The value reported. Left out only when `unusable` says why there is none. */
  readonly value?: Decimal;
  readonly comparator?: '<' | '<=' | '>=' | '>';
  readonly unit: UnitCode;
  /**
   * Every reading, in the order taken and in the same unit.
   * @minItems 1
   * @maxItems 1000
   */
  readonly readings?: readonly Decimal[];
  /** How `value` came from the readings. */
  readonly convention?: 'single' | 'mean' | 'median' | 'maximum' | 'minimum' | 'last';
  /**
   * Code of terminology/measure-conditions.json: dim light, with vertical overlap, assisted ...
   * @minItems 1
   */
  readonly conditions?: readonly Code[];
  readonly unusable?: Reason;
  /** Key of the finding that was measured. */
  readonly about?: Key;
  /** The value was estimated and not read off an instrument. */
  readonly estimated?: boolean;
}

/** A score on a named, versioned scale, as the examiner gave it; never computed from other statements. */
export interface ScaleScore extends StatementBase {
  readonly kind: 'scale-score';
  /** Code of terminology/scales.json. */
  readonly scale: Code;
  readonly version: Text;
  readonly region?: Code;
  readonly side?: Side;
  /** A grade code of an ordinal scale, or the total of a summed one. */
  readonly score: Code | Count;
  /** @minItems 1 */
  readonly items?: readonly ScaleItem[];
  /** Key of the finding that was scored. */
  readonly about?: Key;
}

export interface ScaleItem {
  readonly item: Code;
  readonly value: boolean | Count;
}

/** A complaint that was asked about, told unasked, or not asked. */
export interface Symptom extends StatementBase {
  readonly kind: 'symptom';
  /** Code of terminology/symptoms.json. */
  readonly symptom: Code;
  /** `not-asked` is a statement too: the question was left out. */
  readonly answer: 'yes' | 'no' | 'unsure' | 'declined' | 'not-asked';
  readonly toldBy?: 'patient' | 'relative' | 'carer' | 'interpreter' | 'other';
  readonly region?: Code;
  readonly side?: Side;
  readonly onset?: DateTime;
  /** Duration in the words used ("a few weeks"); never turned into a date. */
  readonly durationText?: Text;
  readonly duration?: Quantity;
  readonly course?: 'better' | 'same' | 'worse' | 'comes-and-goes';
  /**
   * Numeric rating from 0 (none) to 10.
   * @asType integer
   * @minimum 0
   * @maximum 10
   */
  readonly severity?: number;
  readonly trigger?: Text;
}

/** The examiner's words on a region, or on the exam where no region is named. */
export interface Note extends StatementBase {
  readonly kind: 'note';
  readonly region?: Code;
  readonly side?: Side;
  readonly text: Text;
}

/** A picture taken or referred to. It is never the only record of a measurement. */
export interface Image extends StatementBase {
  readonly kind: 'image';
  readonly region: Code;
  readonly side?: Side;
  readonly title: Text;
  /**
   * Media type such as `image/jpeg`.
   * @pattern ^[a-z]+/[A-Za-z0-9.+-]+$
   */
  readonly contentType: string;
  readonly url: Uri;
  /** A scale bar or ruler is in the picture. */
  readonly scaleBar?: boolean;
  /** What the picture may be used for, as the patient agreed. */
  readonly consent: 'given' | 'refused' | 'not-asked';
  readonly purpose?: Text;
  /**
   * Keys of the statements that it shows.
   * @minItems 1
   */
  readonly about?: readonly Key[];
}
