import type { Side } from '../../model/primitive.ts';
import type { Urgency } from '../prompts/urgency.ts';
import { type ExaminerCautionId, examinerCautions } from '../tables/cautions.ts';
import type { PictureId } from '../tables/pictures.ts';
import type { Phrase, PromptId, Remark } from './english.ts';

export interface PromptSentences {
  /** What the guideline asks for, with its own verb, in one sentence. */
  readonly advice: string;
  /** What the criterion is, for the case that it does not hold or cannot be told. */
  readonly criterion: string;
}

/**
 * Words of one language for what prompts say and what they lack; names in braces are filled in. The
 * displays of codes come from the catalogue (`inLanguage`). Complete by type: a language that lacks
 * a sentence does not compile.
 */
export interface CheckWords {
  /** BCP 47 tag. */
  readonly tag: string;
  /** A display as it stands within a sentence. */
  readonly within: (display: string) => string;
  /** "on the left". */
  readonly sides: Readonly<Record<Side, string>>;
  readonly and: string;
  readonly phrases: Readonly<Record<Phrase, string>>;
  readonly prompts: Readonly<Record<PromptId, PromptSentences>>;
  /** What each picture is; left out where the title of its row says it. */
  readonly pictures?: Readonly<Record<PictureId, string>>;
  /** Of a picture: what to consider, or what the guideline asks for, and how soon. */
  readonly advice: Readonly<Record<'consider' | 'refer', Readonly<Record<Urgency, string>>>>;
  readonly remarks: Readonly<Record<Remark, string>>;
  /** Over what is shown of prompts, on a page and on the command line alike. */
  readonly headings: {
    readonly prompts: string;
    readonly open: string;
    readonly missing: string;
    readonly setAside: string;
    /** After the first of what is missing: "and {count} more". */
    readonly more: string;
    readonly mind: string;
  };
  /** "{criterion}: cannot be told from this exam". */
  readonly untold: string;
  readonly unmet: string;
  readonly cautions: readonly string[];
  /** Of the examination itself; left out where the row of the table says it. */
  readonly examinerCautions?: Readonly<Record<ExaminerCautionId, string>>;
}

/** A sentence with its names filled in. */
export function fill(
  sentence: string,
  values: Readonly<Record<string, string | number>> = {},
): string {
  return sentence
    .replace(/\{(\w+)\}/g, (whole, name: string) =>
      Object.hasOwn(values, name) ? String(values[name]) : whole,
    )
    .replaceAll('  ', ' ')
    .trim();
}

/** What the examiner is to mind, in words. */
export function cautionText(words: CheckWords, id: ExaminerCautionId): string {
  return words.examinerCautions?.[id] ?? examinerCautions[id].text;
}

/** The first three of what is missing, and how many more there are. */
export function missingText({ headings }: CheckWords, missing: readonly string[]): string {
  const first = missing.slice(0, 3).join('; ');
  const more = missing.length - 3;
  return more > 0 ? `${first} ${fill(headings.more, { count: more })}` : first;
}

/** `a`, `a and b`, `a, b and c`. */
export function listText(words: CheckWords, parts: readonly string[]): string {
  const last = parts.at(-1);
  if (last === undefined) return '';
  return parts.length === 1 ? last : `${parts.slice(0, -1).join(', ')} ${words.and} ${last}`;
}
