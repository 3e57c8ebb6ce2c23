import type { Filing } from '../fhir/filing.ts';
import type { ClinicIdentity } from '../fhir/names/part-names.ts';
import type { ExamSignature } from '../fhir/signature.ts';
import type { BudgetOption } from '../issues/budget.ts';
import type { Outcome } from '../issues/issue.ts';
import type { Exam } from '../model/exam.ts';
import type { Catalogue } from '../terminology/catalogue.ts';
import type { AdopterCodes } from '../terminology/code-map/entry.ts';
import type { Language } from '../terminology/languages/language.ts';
import type { Remainder } from './bundle/remainder.ts';

/** Facts that an exam cannot do without and that bundles of others often leave out. */
export type Supplied = Partial<
  Pick<Exam, 'id' | 'status' | 'subject' | 'examiners' | 'performed' | 'recorded' | 'protocol'>
>;

/** How a bundle is read; each option has a default. */
export interface ReadOptions {
  /** Id of the exam to read, where the bundle holds several. */
  readonly exam?: string;
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** As at the export. Default `https://face-neck-fhir.example/fhir`. */
  readonly canonicalBase?: string;
  /** As at the export. */
  readonly identity?: ClinicIdentity;
  /** As at the export. */
  readonly codes?: AdopterCodes;
  /** As at the export. Default: English. */
  readonly language?: Language;
  /** As at the export. */
  readonly filing?: Filing;
  /** Used where the bundle does not say; never in place of what it says. */
  readonly supplied?: Supplied;
  /** Put the offending value into `received` of an issue. Default false, since it can be patient data. */
  readonly includeValues?: boolean;
  /** What the call may take; default `budgets.bundle`. */
  readonly budget?: BudgetOption;
}

/** An exam, what is wrong with the bundle, and what of it is not in the exam. */
export type ReadOutcome = Outcome<Exam> & {
  readonly remainder: readonly Remainder[];
  /** Signatures of steps of its history, for an export with the same options. */
  readonly signatures: readonly ExamSignature[];
};
