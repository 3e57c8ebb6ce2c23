import type { CheckOptions } from '../checks/settings/check-settings.ts';
import type { IssueLanguage } from '../issues/issue.ts';
import type { Exam } from '../model/exam.ts';
import type { Language } from '../terminology/languages/language.ts';
import type { ReportWords } from './words/report-words.ts';

/** Language, checks and prior version of a page. */
export interface ReportOptions {
  /** Exam, rule sets, thresholds and prior exam to check with; without rule sets no prompt is shown. */
  readonly checks?: CheckOptions;
  /** Exams before the prior one, in any order, whose figures are drawn beside today's. */
  readonly earlier?: readonly Exam[];
  /** Language of the displays of codes. Default English. */
  readonly language?: Language;
  /** Words of the page itself, those of `language`. Default English. */
  readonly words?: ReportWords;
  /** Sentences of what does not agree, such as `germanIssues` of `face-neck-fhir/issues/de`. Default English. */
  readonly issues?: IssueLanguage;
  /** Prints all that does not stand on the first pages as an appendix, on a page of its own. Default: right behind them. */
  readonly appendix?: boolean;
  /** The version before the last step, so that the page shows what stood there beside what now does. */
  readonly versionBefore?: Exam;
}
