import type { LetterReader } from './letter.ts';

/**
 * The words of letters in one language. Headings follow the order of the outpatient letter standard of
 * the Professional Record Standards Body (v2.2, April 2023), as far as an exam has what they ask for.
 */
export interface LetterWords {
  readonly title: Readonly<Record<LetterReader, string>>;
  readonly notChecked: string;
  /** Before the number of a printed page, and between it and the number of pages. */
  readonly pageNumber: { readonly page: string; readonly of: string };
  readonly to: string;
  readonly from: string;
  readonly about: string;
  readonly headings: Readonly<
    Record<
      | 'reason'
      | 'history'
      | 'summary'
      | 'findings'
      | 'negatives'
      | 'notExamined'
      | 'plan'
      | 'told'
      | 'writer'
      | 'seen'
      | 'next'
      | 'return',
      string
    >
  >;
  readonly signature: string;
  /** Plain sentences to the patient. In braces stands what the exam says. */
  readonly patient: {
    readonly greeting: string;
    readonly examined: string;
    readonly came: string;
    readonly sign: string;
    readonly nothing: string;
    readonly more: string;
    readonly notSeen: string;
    readonly referral: string;
    readonly referralUnnamed: string;
    readonly urgency: Readonly<Record<'routine' | 'urgent' | 'asap' | 'stat', string>>;
    readonly due: string;
    readonly investigation: string;
    readonly reviewBy: string;
    readonly owner: string;
    readonly ask: string;
  };
  readonly employer: {
    readonly attended: string;
    readonly statement: string;
    readonly noMore: string;
  };
}
