import type { Bundle } from 'fhir/r4.js';
import type * as r4b from 'fhir/r4b.js';
import type * as r5 from 'fhir/r5.js';
import type { Filing } from '../fhir/filing.ts';
import type { SnomedPolicy } from '../fhir/licence/snomed-policy.ts';
import type { ClinicIdentity } from '../fhir/names/part-names.ts';
import type { ExamSignature } from '../fhir/signature.ts';
import type { FhirVersion } from '../fhir/version.ts';
import type { BudgetOption } from '../issues/budget.ts';
import type { Exam } from '../model/exam.ts';
import type { Catalogue } from '../terminology/catalogue.ts';
import type { AdopterCodes } from '../terminology/code-map/entry.ts';
import type { Language } from '../terminology/languages/language.ts';
import type { FreeSet } from '../terminology/published/snomed.ts';
import type { Detail } from './detail.ts';
import type { MasterData, MasterDataMode } from './resources/master-data.ts';
import type { FormMaker } from './resources/presented-form.ts';
import type { Target } from './target/guides.ts';

/**
 * Type of the bundle that an exam is exported as; see {@link
 * https://hl7.org/fhir/R4/valueset-bundle-type.html}.
 */
export type BundleType = 'collection' | 'transaction' | 'document';

/** How an exam is exported; each option has a default. */
export interface ExportOptions {
  /** Default `R4`. */
  readonly fhirVersion?: FhirVersion;
  /** Default `collection`. */
  readonly bundleType?: BundleType;
  /** Which SNOMED CT codes may leave. Default `free-set`: ids in the published Global Patient Set of 2020-09. */
  readonly snomed?: SnomedPolicy;
  /**
   * Look-up of the whole free set, from the subpath `terminology/free-set`. Without it, SNOMED CT ids
   * of the caller that our tables do not hold are held back under `free-set`, with an issue.
   */
  readonly freeSet?: FreeSet;
  /** A code map of the clinic that adds to our codings or replaces them. */
  readonly codes?: AdopterCodes;
  /** Language of our own displays and texts, such as `german`. Default: English, with no language stated. */
  readonly language?: Language;
  /**
   * How the side of a place is coded besides our own code and the text that names it: by the standard
   * extension (default), by BodyStructure resources, or not (`text`).
   */
  readonly laterality?: 'extension' | 'body-structure' | 'text';
  /** Put the offending value into `received` of an issue. Default false, since it can be patient data. */
  readonly includeValues?: boolean;
  /**
   * In a transaction, how what the exam says is stored: `put` (update by our id, the default) or
   * `conditional` (update by identifier, where the server gives the ids).
   */
  readonly transaction?: 'put' | 'conditional';
  /**
   * In a transaction, how people, places and devices meet those that the server holds. Default
   * `match`: nothing that is there is written over.
   */
  readonly masterData?: MasterDataMode | MasterData;
  /**
   * In a transaction: the exam as it was sent before, or the transaction that it was sent in, of the
   * same version and with the same options. What it held and this one no longer holds is sent as
   * entered in error, since a transaction writes and never deletes. Take the transaction where it
   * is not known which versions have arrived: it also holds what was taken back before.
   */
  readonly previous?: Exam | Bundle | r4b.Bundle | r5.Bundle;
  /** How much of the exam leaves. Default `everything`. */
  readonly detail?: Detail;
  /** Category of the report, status of the visit, security labels and tags. */
  readonly filing?: Filing;
  /**
   * Forms of the report that people read, to stand in `DiagnosticReport.presentedForm`: many systems
   * show nothing else of a report. `htmlForm()` of the entry `report` makes the page of `toHtml`.
   */
  readonly presentedForms?: FormMaker;
  /**
   * The same forms as a DocumentReference too, for systems that file documents and show no reports;
   * not in a document bundle. Default: with `detail: 'report'`.
   */
  readonly documentReference?: boolean;
  /**
   * Signatures that were made of this record as it is exported with these options (`contentToSign` of
   * the entry `sign`), to stand in the Provenance of the step that was signed.
   */
  readonly signatures?: readonly ExamSignature[];
  /**
   * Identifier systems of your own for exam and statements: all ids follow from them. Whatever is
   * stored needs them (a transaction, `toNdjson`), since the exams of two clinics can have the same
   * ids; a bundle that is only looked at takes systems below `canonicalBase`.
   */
  readonly identity?: ClinicIdentity;
  /** Base of our code systems and profiles. Default `https://face-neck-fhir.example/fhir`. */
  readonly canonicalBase?: string;
  /**
   * Name in `meta.profile` the profile that a report, observation or document conforms to. Default
   * false: receivers that do not hold our profiles may refuse a resource that claims one. There are
   * profiles of R4 and of R5; in R4B nothing is claimed.
   */
  readonly profiles?: boolean;
  /**
   * Name in `meta.profile` the profiles of a guide, in R4. Where the guide asks for what the exam does
   * not state, the export fails and says what is missing: nothing is made up. `ips`: what a patient
   * summary takes in of an exam; the exam is not a summary itself.
   */
  readonly target?: Target;
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** Export an exam whose status is `draft`. Default false: a draft gives an error. */
  readonly allowDraft?: boolean;
  /** Generated narrative in each resource. Default true; a document always has it. */
  readonly narrative?: boolean;
  /** What the call may take; default `budgets.exam`. */
  readonly budget?: BudgetOption;
}
