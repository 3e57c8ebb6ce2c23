import type { Code, Decimal, Identifier, Key, PartialDate, Quantity, Text } from './primitive.ts';

/**
 * A record that the receiving system already holds.
 * @minLength 1
 * @maxLength 2000
 * @pattern ^\S+$
 */
export type ExistingReference = string;

export interface HumanName {
  readonly family?: Text;
  /** @minItems 1 */
  readonly given?: readonly Text[];
  readonly prefix?: Text;
  readonly text?: Text;
}

/** The person examined: described here, or a reference to a Patient that the receiver has. */
export interface Subject {
  /** Literal reference such as `Patient/123`; when given, only a document holds a Patient. */
  readonly reference?: ExistingReference;
  /** @minItems 1 */
  readonly identifiers?: readonly Identifier[];
  readonly name?: HumanName;
  readonly birthDate?: PartialDate;
  /** Administrative gender as registered. @see https://hl7.org/fhir/R4/valueset-administrative-gender.html */
  readonly gender?: 'male' | 'female' | 'other' | 'unknown';
}

/** A clinician who examined, recorded or signed. */
export interface Examiner {
  readonly key: Key;
  readonly reference?: ExistingReference;
  /** @minItems 1 */
  readonly identifiers?: readonly Identifier[];
  readonly name?: HumanName;
  /** Role in this exam in the clinic's words, for example "occupational physician". */
  readonly role?: Text;
}

export interface Organization {
  readonly reference?: ExistingReference;
  /** @minItems 1 */
  readonly identifiers?: readonly Identifier[];
  readonly name?: Text;
}

/** The visit: described by identifier, or a reference to an Encounter that the receiver has. */
export interface Encounter {
  readonly reference?: ExistingReference;
  /** @minItems 1 */
  readonly identifiers?: readonly Identifier[];
  /** @see http://terminology.hl7.org/CodeSystem/v3-ActCode AMB, VR, HH, FLD, EMER, IMP */
  readonly class?: 'ambulatory' | 'virtual' | 'home' | 'field' | 'emergency' | 'inpatient';
}

/** What names the person of an exam: its reference, or else its first identifier; undefined without both. */
export function personName({ reference, identifiers: [first] = [] }: Subject): string | undefined {
  return reference ?? (first && `${first.system}|${first.value}`);
}

/** An instrument used in the exam. Statements name it by `key`. */
export interface Instrument {
  readonly key: Key;
  /** Code of terminology/instruments.json. */
  readonly type: Code;
  readonly reference?: ExistingReference;
  /** Total magnification as a factor: `10` for ten times. */
  readonly magnification?: Decimal;
  /** Smallest step that can be read off, with unit. */
  readonly resolution?: Quantity;
  /** What the type does not say: speculum size, light, polarisation, exophthalmometer base. */
  readonly detail?: Text;
  readonly serial?: Text;
}
