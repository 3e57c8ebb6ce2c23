import { folded } from '../../find/fold.ts';
import { printable } from '../exams/note.ts';
import { datesOf } from '../suggest/guess/guess-dates.ts';
import type { SampleField } from '../suggest/guess/sample.ts';
import { type ValueKind, valueKind } from '../suggest/guess/value-kind.ts';
import { shortSides, sideWords } from '../suggest/names/name-words.ts';
import type { HeadUse } from '../suggest/names/use-words.ts';
import type { Proposal } from '../suggest/proposal.ts';

/** How often something comes. */
export interface Counted {
  readonly text: string;
  readonly count: number;
}

/** One field, or one item of a table of items, as an export fills it. */
export interface ScannedField {
  readonly name: string;
  readonly of: 'field' | 'item';
  readonly filled: number;
  readonly blank: number;
  /** Different texts. */
  readonly different: number;
  readonly looks: ValueKind | 'dates' | 'sides' | 'long-texts';
  /** Letters of the shortest and the longest text. */
  readonly shortest: number;
  readonly longest: number;
  /** Forms that read every text as a date; several where the order of day and month cannot be told. */
  readonly dates: readonly string[];
  /** How often each of the commonest texts comes, without the texts. */
  readonly frequencies: readonly number[];
  /** The commonest texts with letters as `a` and digits as `9`. */
  readonly shapes: readonly Counted[];
  /** The commonest texts, where values were asked for and are no one's name, number or prose. */
  readonly values?: readonly Counted[];
  /** Whether something is proposed for it. */
  readonly placed: boolean;
}

/** Texts and shapes that are listed. */
const MOST_LISTED = 12;

/** Longest text that is a value and not prose. */
const LONGEST_VALUE = 60;

/** Texts that the form of a field is told by. */
const MOST_TRIED = 500;

/** Uses whose values say who somebody is. */
const personal: ReadonlySet<HeadUse> = new Set(['subject', 'family', 'given', 'born', 'examiner']);

export function scanField(
  { name, texts, words, blanks }: SampleField,
  of: ScannedField['of'],
  proposal: Proposal | undefined,
  showValues: boolean,
): ScannedField {
  const lengths = texts.map((text) => text.length);
  const longest = lengths.reduce((most, length) => Math.max(most, length), 0);
  const dates = datesOf(words.slice(0, MOST_TRIED));
  const counted = commonest(texts);
  const isPersonal = proposal?.head !== undefined && personal.has(proposal.head);
  return {
    name,
    of,
    filled: texts.length,
    blank: blanks,
    different: words.length,
    looks: looksOf(words, dates, longest),
    shortest: lengths.reduce((least, length) => Math.min(least, length), longest),
    longest,
    dates,
    frequencies: counted.map(({ count }) => count),
    shapes: commonest(texts.map(shapeOf)),
    ...(showValues &&
      !isPersonal && {
        values: counted
          .filter(({ text }) => text.length <= LONGEST_VALUE)
          .map(({ text, count }) => ({ text: printable(text), count })),
      }),
    placed:
      proposal !== undefined &&
      [proposal.target, proposal.head, proposal.role].some((use) => use !== undefined),
  };
}

function looksOf(
  words: readonly string[],
  dates: readonly string[],
  longest: number,
): ScannedField['looks'] {
  if (words.length > 0 && words.every((word) => sides.has(folded(word)))) return 'sides';
  // Numbers of eight digits are read as dates only where they can be nothing else.
  if (dates.length > 0) return 'dates';
  if (longest > LONGEST_VALUE) return 'long-texts';
  return valueKind(words);
}

const sides: ReadonlySet<string> = new Set([
  ...sideWords.keys(),
  ...shortSides.flatMap(({ right, left, both }) => [
    right,
    left,
    ...(both === undefined ? [] : [both]),
  ]),
]);

/** Letters and digits as one of each, other signs of ASCII as they are, so that no word is left. */
function shapeOf(text: string): string {
  return text
    .slice(0, LONGEST_VALUE)
    .replace(/[\p{L}\p{M}]+/gu, 'a')
    .replace(/\p{N}/gu, '9')
    .replace(/[^\x20-\x7e]/g, '?');
}

function commonest(texts: readonly string[]): readonly Counted[] {
  const counts = new Map<string, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  return [...counts]
    .map(([text, count]) => ({ text, count }))
    .sort((one, other) => other.count - one.count)
    .slice(0, MOST_LISTED);
}
