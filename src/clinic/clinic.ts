import type { CheckOptions } from '../checks/settings/check-settings.ts';
import type { ConvertSettings } from '../convert/bulk/options.ts';
import type { ExportOptions } from '../export/options.ts';
import type { FindOptions } from '../find/find.ts';
import type { FormOptions } from '../forms/options.ts';
import type { ReadOptions } from '../read/options.ts';
import type { Catalogue } from '../terminology/catalogue.ts';
import type { ClinicFile } from './clinic-file.ts';
import type { UndecidedPart } from './undecided.ts';

/**
 * A clinic file, read and checked, as the options of what the library does: `toBundle(exam, clinic.export)`.
 * Options of a call can stand beside it: `{ ...clinic.export, fhirVersion: 'R5' }`.
 */
export interface Clinic {
  readonly file: ClinicFile;
  /** The tables with the own rows, for `parseExam`, `startExam`, `toFlat` and all that takes a catalogue. */
  readonly catalogue: Catalogue;
  readonly language: 'en' | 'de';
  /** What nobody has decided yet; the defaults of the library hold there. */
  readonly undecided: readonly UndecidedPart[];
  /** For `toBundle`. */
  readonly export: ExportOptions;
  /** For `fromBundle`. */
  readonly read: ReadOptions;
  /** For `checkExam`, and as `checks` for pages, letters and audits. */
  readonly checks: CheckOptions;
  /** For `toQuestionnaire` and what else is done with forms. */
  readonly form: FormOptions;
  /** For `find`. */
  readonly find: FindOptions;
  /** For `convertFiles` and `convertLines`, beside the mapping. */
  readonly convert: Omit<ConvertSettings, 'mapping'>;
}
