import type { BudgetOption } from '../issues/budget.ts';
import type { Catalogue } from '../terminology/catalogue.ts';
import type { FormLanguage } from './form.ts';

/** What a form asks and in which language. A response is read with the same options. */
export interface FormOptions {
  /** Default `en`. Rows of your own keep the displays that you gave them. */
  readonly language?: FormLanguage;
  /** Default: the built-in catalogue. A protocol of your own stands in one of `createCatalogue`. */
  readonly catalogue?: Catalogue;
  /**
   * By region, codes of the signs that are asked one by one there. A region that is not named asks
   * for those that the table `negatives` has for it.
   */
  readonly signs?: Readonly<Record<string, readonly string[]>>;
  /** Any other sign of the region can be added, by a list of all that are found there. Default true. */
  readonly furtherSigns?: boolean;
  /** Read-only items that show what was said last time; `startingResponse` fills them. Default false. */
  readonly lastTime?: boolean;
  /** Base of our code systems. Default `https://face-neck-fhir.example/fhir`. */
  readonly canonicalBase?: string;
  /** What the call may take; default `budgets.settings`. */
  readonly budget?: BudgetOption;
}
