import type { BundleType, ExportOptions } from '../../export/options.ts';
import type { SnomedPolicy } from '../../fhir/licence/snomed-policy.ts';
import type { FhirVersion } from '../../fhir/version.ts';
import type { CatalogueAdditions } from '../../terminology/catalogue.ts';
import type { CodeMapRow } from '../../terminology/code-map/adopter-codes.ts';
import type { Language } from '../../terminology/languages/language.ts';
import type { Proposal } from '../proposals/proposal.ts';

/** What a run writes: a bundle a line, a file for each resource type, or an exam a line. */
export type OutputKind = 'bundles' | 'resources' | 'exams';

/** How records become lines. Plain data, so that a worker can be told. */
export interface ConvertSettings
  extends Pick<
    ExportOptions,
    | 'identity'
    | 'masterData'
    | 'transaction'
    | 'detail'
    | 'target'
    | 'laterality'
    | 'profiles'
    | 'filing'
  > {
  /** The mapping, as parsed from its file. */
  readonly mapping: unknown;
  /** Default `bundles`. */
  readonly to?: OutputKind;
  /** Default `R4`. */
  readonly fhirVersion?: FhirVersion;
  /** Default `collection`. */
  readonly bundleType?: BundleType;
  /** Default `free-set`. */
  readonly snomed?: SnomedPolicy;
  /** Language of our own displays and texts. Default: English. */
  readonly language?: Language;
  /** As of the export. Default `https://face-neck-fhir.example/fhir`. */
  readonly canonicalBase?: string;
  /** Rows of an adopter's own tables. */
  readonly additions?: CatalogueAdditions;
  /** Lines of an adopter's code map, as `adopterCodes` takes them but for `path`. */
  readonly codeMap?: readonly CodeMapRow[];
  /** Proposals for its notes that were confirmed; those of other exams and others are passed over. */
  readonly confirmed?: readonly Proposal[];
  /** Write where each field went, one line per exam. Default false. */
  readonly ledger?: boolean;
}

/** The inputs and the output of a run. */
export interface BulkOptions extends ConvertSettings {
  /** Files and folders. `.gz` and `.zip` are opened. */
  readonly inputs: readonly string[];
  /** `quarantine`: the inputs are mended quarantine files. Default `export`. */
  readonly inputKind?: 'export' | 'quarantine';
  /** Folder for the results; it must be empty or not there, unless `resume` is set. */
  readonly out: string;
  /** Worker threads. Default 1: none, all in this thread. */
  readonly jobs?: number;
  /** Go on with a run that was stopped, however it was stopped. */
  readonly resume?: boolean;
  /** Exams between two points from which a stopped run can go on. Default 2000. */
  readonly checkpointEvery?: number;
}

/** What a run needs from the outside. */
export interface BulkIo {
  /** Milliseconds; for rates only, never for data. */
  readonly now: () => number;
  /** Module that worker threads run. Default: the built one; tests run it from source. */
  readonly worker?: URL;
  /** Takes progress lines. A terminal gets them often and on one line. */
  readonly progress?: { readonly isTerminal: boolean; readonly write: (text: string) => void };
}
