import type { Sentence, SentenceTable } from './facts.ts';
import type { Wording } from './render.ts';

/** The sentences of a table in another language: complete by code and reason. */
export type Translated<Table> = {
  readonly [Code in keyof Table]: { readonly [Reason in keyof Table[Code]]: Sentence };
};

/** Words of one language for issues: `germanIssues` of `face-neck-fhir/issues/de`. */
export interface IssueLanguage {
  /** BCP 47 tag. */
  readonly tag: string;
  /** Tables by code and reason. What none of them has stays in English. */
  readonly sentences: readonly SentenceTable[];
  /** Words for the severities. */
  readonly severities: Readonly<Record<'error' | 'warning' | 'information', string>>;
  /** Words that sentences are filled with. */
  readonly wording: Wording & { readonly expected: string };
}
