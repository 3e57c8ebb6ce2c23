import type { Instant, Key, Text, Uri } from '../../model/primitive.ts';
import type { RecordStatus } from '../../model/record-event.ts';
import type { FhirSource } from './source.ts';
import type { MappingTest } from './test.ts';

/**
 * How FHIR of another system is taken. What its codes mean the library knows; what bundles of others leave
 * out stands here, and is used only where a bundle does not say it.
 */
export interface FhirMapping {
  readonly $schema?: string;
  readonly format: 'face-neck-mapping/1';
  readonly title?: Text;
  readonly source: FhirSource;
  readonly exam?: FhirExam;
  /**
   * Bundles with what must become of them, which `testMapping` runs.
   * @minItems 1
   */
  readonly tests?: readonly MappingTest[];
}

/** What an exam must have, for bundles that do not say it. */
export interface FhirExam {
  /**
   * Name of the exporting system. The id of an exam that this library did not write is this name, a full
   * stop, and type and id of its report, or of its first observation where there is no report:
   * `harbour.DiagnosticReport/7`. Without it such an exam is set aside, since two systems can have the same
   * ids. Exams that this library wrote keep their ids.
   */
  readonly prefix?: Key;
  readonly status?: RecordStatus;
  readonly protocol?: { readonly id: Key; readonly version: Text };
  readonly recorded?: Instant;
  /** Who examined, where no resource says it. */
  readonly examiner?: FhirExaminer;
}

export interface FhirExaminer {
  readonly name?: Text;
  readonly role?: Text;
  readonly reference?: Text;
}

/** Systems of the identifiers by which exams of this library are known, as at their export. */
export interface FhirIdentity {
  readonly exam?: Uri;
  readonly statement?: Uri;
  readonly tracking?: Uri;
}
