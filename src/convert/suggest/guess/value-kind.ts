import type { FindKind } from '../../../find/phrases.ts';
import { readNumber } from '../../values/number.ts';

/** What the values of a field look like. */
export type ValueKind = 'none' | 'numbers' | 'flags' | 'mixed' | 'words';

/** Numbers and nothing else; 0 and 1 alone are flags; mixed where at least half are numbers. */
export function valueKind(texts: readonly string[]): ValueKind {
  if (texts.length === 0) return 'none';
  const numeric = texts.filter(isNumber).length;
  if (numeric === texts.length) {
    return texts.every((text) => text === '0' || text === '1') ? 'flags' : 'numbers';
  }
  return numeric * 2 >= texts.length ? 'mixed' : 'words';
}

function isNumber(text: string): boolean {
  const read = readNumber(text, text.includes(',') ? ',' : '.');
  return typeof read !== 'string';
}

const none: readonly FindKind[] = [];

/** Kinds that values of each look can be of. A result or state is a word, never a figure. */
const kinds: { readonly [Look in ValueKind]: readonly FindKind[] } = {
  none: ['region', 'sign', 'point', 'measure', 'scale', 'symptom'],
  numbers: ['measure', 'scale'],
  flags: ['region', 'sign', 'point', 'measure', 'scale', 'symptom'],
  mixed: ['measure', 'scale'],
  words: ['region', 'sign', 'point', 'scale', 'symptom'],
};

/** Answers that one kind has and the others have not, folded (common practice, no source). */
const telling: readonly (readonly [words: ReadonlySet<string>, kinds: readonly FindKind[]])[] = [
  [new Set(['normal', 'abnormal', 'unauffallig', 'auffallig']), ['region', 'point']],
  [
    new Set(['present', 'absent', 'pos', 'positive', 'neg', 'negative', 'vorhanden', '+', '-']),
    ['sign', 'point', 'region'],
  ],
  [new Set(['yes', 'no', 'y', 'n', 'ja', 'nein', 'j']), ['sign', 'symptom', 'point']],
];

/** Kinds that a field can be of by its values; those that its answers tell stand apart. */
export function kindsByValues(texts: readonly string[]): {
  readonly possible: readonly FindKind[];
  readonly likely: readonly FindKind[];
} {
  const possible = kinds[valueKind(texts)];
  const words = texts.map((text) => text.toLowerCase().replaceAll('ä', 'a'));
  const group = telling.find(
    ([known]) => words.length > 0 && words.every((word) => known.has(word)),
  );
  return { possible, likely: group?.[1] ?? none };
}
