import type { Path } from '../issues/path.ts';
import type { Exam } from '../model/exam.ts';
import type { Key } from '../model/primitive.ts';
import type { ReportOptions } from '../report/report-options.ts';
import type { LetterWords } from './letter-words.ts';

export const readers = ['specialist', 'general-practitioner', 'patient', 'employer'] as const;

/** Whom a letter is for: what it holds and how it is worded follows from that. */
export type LetterReader = (typeof readers)[number];

/** What a sentence rests on: a statement of the exam, or another part of it. */
export type SentenceSource = { readonly statement: Key } | { readonly path: Path };

/** One sentence or line, as plain text, with what it rests on. A sentence of the form alone rests on nothing. */
export interface LetterSentence {
  readonly text: string;
  /** What the sentence rests on; empty for fixed words. */
  readonly of: readonly SentenceSource[];
}

/** A part of a letter. */
export interface LetterSection {
  /** Left out where a section needs no heading: the address, the greeting. */
  readonly heading?: string;
  readonly sentences: readonly LetterSentence[];
}

/** A letter that is to be read over, changed and signed by a person before it is sent. */
export interface Letter {
  readonly reader: LetterReader;
  /** BCP 47 tag. */
  readonly language: string;
  readonly title: string;
  readonly status: Exam['status'];
  /** Status of the record, whose letter it is, and the day: at the top of every printed page. */
  readonly running: string;
  readonly sections: readonly LetterSection[];
  /** Statements of signs that the letter leaves for a person to tell: suspicions and names of diseases. */
  readonly leftOut: readonly Key[];
}

/** As of the page, with what a letter needs. */
export interface LetterOptions extends ReportOptions {
  /** Default: English. */
  readonly letterWords?: LetterWords;
  /** For the employer: keys of plan items that may be told, with the patient's consent to share. */
  readonly share?: readonly Key[];
}
