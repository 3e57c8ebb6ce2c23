import type { Text } from '../../model/primitive.ts';

/** A piece of an export with what must become of it. */
export interface MappingTest {
  /** What it shows. */
  readonly title?: Text;
  /**
   * The piece as it stands in an export, whole or line by line, for a table with its headings. It is
   * invented: a mapping is no place for a patient.
   */
  readonly source: string | TestLines;
  readonly expect: TestExpectation;
}

/** @minItems 1 */
export type TestLines = readonly string[];

/** What must become of a source; what is not said here is not looked at. */
export interface TestExpectation {
  /** Statements that must be there, each with at least these properties. */
  readonly statements?: readonly ExpectedPart[];
  /** No other statement is there. */
  readonly only?: boolean;
  /** Statements that must not be there: none has all of these properties. */
  readonly never?: readonly ExpectedPart[];
  /** Parts of each exam besides its statements: `{ "status": "final" }`. */
  readonly exam?: ExpectedPart;
  /**
   * How many exams are made.
   * @asType integer
   * @minimum 0
   */
  readonly exams?: number;
  /** Codes of the first error of each exam that is set aside, in their order. Left out: none is. */
  readonly quarantine?: readonly string[];
}

/** Properties with their values; of an object within it those that are named. */
export interface ExpectedPart {
  readonly [property: string]: unknown;
}
