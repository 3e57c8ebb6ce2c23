/**
 * Decimal number as text, with the precision as stated: `4.0` is not `4`.
 * @pattern ^-?(0|[1-9][0-9]{0,17})(\.[0-9]{1,17})?$
 */
export type Decimal = string;

/** The form of a {@link Decimal}, for what is read from elsewhere. */
export const decimalForm = /^-?(0|[1-9][0-9]{0,17})(\.[0-9]{1,17})?$/;

/**
 * Date or time with the precision as stated: `2024`, `2024-03`, `2024-03-01`, or a time with zone.
 * @see https://hl7.org/fhir/R4/datatypes.html#dateTime
 * @pattern ^[0-9]{4}(-[0-9]{2}(-[0-9]{2}(T[0-9]{2}:[0-9]{2}:[0-9]{2}(\.[0-9]{1,9})?(Z|[+-][0-9]{2}:[0-9]{2}))?)?)?$
 */
export type DateTime = string;

/**
 * A moment, to the second or finer, with its zone.
 * @see https://hl7.org/fhir/R4/datatypes.html#instant
 * @pattern ^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}(\.[0-9]{1,9})?(Z|[+-][0-9]{2}:[0-9]{2})$
 */
export type Instant = string;

/**
 * A calendar date with the precision as stated: `1962`, `1962-03` or `1962-03-20`.
 * @pattern ^[0-9]{4}(-[0-9]{2}(-[0-9]{2})?)?$
 */
export type PartialDate = string;

/**
 * A name that is stable within one exam and, for tracked lesions, from one exam to the next.
 * @minLength 1
 * @maxLength 200
 * @pattern ^[A-Za-z0-9][A-Za-z0-9._~:/-]*$
 */
export type Key = string;

/**
 * A code of one of the tables in /terminology, or one that an adopter added to the catalogue.
 * @minLength 1
 * @maxLength 100
 * @pattern ^[a-z0-9][a-z0-9.-]*$
 */
export type Code = string;

/**
 * The examiner's words, verbatim. At most a million UTF-16 units, not blank.
 * @minLength 1
 * @maxLength 1000000
 * @pattern \S
 */
export type Text = string;

/**
 * A UCUM unit code such as `mm`.
 * @see https://ucum.org/ucum
 * @minLength 1
 * @maxLength 60
 * @pattern ^\S+$
 */
export type UnitCode = string;

/**
 * An absolute URI.
 * @maxLength 2000
 * @pattern ^[a-z][a-z0-9+.-]*:\S+$
 */
export type Uri = string;

export interface Quantity {
  readonly value: Decimal;
  readonly unit: UnitCode;
  /** `<` and the like, where the instrument or the examiner gave only a bound. */
  readonly comparator?: '<' | '<=' | '>=' | '>';
}

/** A code of any code system, as the caller gives it; the licence policy decides whether it leaves. */
export interface Coding {
  readonly system: Uri;
  readonly version?: Text;
  /**
   * @minLength 1
   * @maxLength 200
   * @pattern ^\S+( \S+)*$
   */
  readonly code: string;
  readonly display?: Text;
}

/** A business identifier: a number and the system that gave it. */
export interface Identifier {
  readonly system: Uri;
  readonly value: Text;
  readonly use?: 'usual' | 'official' | 'temp' | 'secondary' | 'old';
}

/**
 * The side of the patient, never of the viewer. `right-of-midline` and `left-of-midline` belong to
 * regions that cross the midline.
 */
export type Side = 'right' | 'left' | 'both' | 'midline' | 'right-of-midline' | 'left-of-midline';
