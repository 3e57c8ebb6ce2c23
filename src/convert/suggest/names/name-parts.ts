import { folded, termsOf } from '../../../find/fold.ts';
import type { Side } from '../../../model/primitive.ts';
import { negations, type ShortSide, shortSides, sideWords, unitWords } from './name-words.ts';

/** A side as a name tells it. */
export interface NamedSide {
  readonly side: Side;
  readonly word: string;
  /** Section whose organs alone have this word. */
  readonly section?: string;
}

/** A name taken apart. Nothing in it is corrected or guessed. */
export interface NameParts {
  /** All words, folded, as they stand, without the unit. */
  readonly terms: readonly string[];
  /** The words without those of the side, and without what denies them. */
  readonly about: readonly string[];
  readonly side?: NamedSide;
  /** Words of two sides, which tell none. */
  readonly twoSides: boolean;
  /** A single letter or two that would be a side if its counterpart stood in another name. */
  readonly loneSide?: string;
  /** Word that could turn the meaning round. */
  readonly negation?: string;
  /** UCUM code of a unit that the name states, with its text; empty where it is none of ours. */
  readonly unit?: { readonly code: string; readonly word: string };
}

/** Pairs of short side words of which both are used in some names. */
export function sidePairsOf(names: readonly string[]): readonly ShortSide[] {
  const used = new Set(names.flatMap((name) => wordsOf(withoutUnit(name).rest)));
  return shortSides.filter(({ right, left }) => used.has(right) && used.has(left));
}

export function nameParts(name: string, pairs: readonly ShortSide[]): NameParts {
  const { rest, unit } = withoutUnit(name);
  const words = wordsOf(rest);
  const terms = termsOf(words.join(' '));
  const found = words.flatMap((word): NamedSide[] => {
    const side = sideWords.get(word);
    if (side !== undefined) return [{ side, word }];
    const pair = pairs.find((one) => [one.right, one.left, one.both].includes(word));
    return pair === undefined ? [] : [named(word, pair)];
  });
  const sides = new Set(found.map(({ side }) => side));
  const isSide = new Set(found.map(({ word }) => word));
  const lone = words.find(
    (word) => !isSide.has(word) && shortSides.some((one) => [one.right, one.left].includes(word)),
  );
  const negation = words.find((word) => negations.has(word));
  return {
    terms,
    about: terms.filter((term) => !isSide.has(term) && !negations.has(term)),
    twoSides: sides.size > 1,
    ...(sides.size === 1 && found[0] !== undefined && { side: found[0] }),
    ...(lone !== undefined && { loneSide: lone }),
    ...(negation !== undefined && { negation }),
    ...(unit !== undefined && { unit }),
  };
}

function named(word: string, { right, left, section }: ShortSide): NamedSide {
  const side = word === right ? 'right' : word === left ? 'left' : 'both';
  return { side, word, ...(section !== undefined && { section }) };
}

/** Folded words of a name, of which `PupilDiameter` has two. */
export function wordsOf(name: string): readonly string[] {
  return folded(name.replace(/(\p{Ll}|\d)(\p{Lu})/gu, '$1 $2'))
    .split(' ')
    .filter((word) => word !== '');
}

const inBrackets = /[([]\s*([^()[\]]{1,8})\s*[)\]]\s*$/;
const atEnd = /[\s_.,-]([a-z]{1,4}(?:\/[a-z]{1,4})?|°)\.?\s*$/i;

/** A mark or inches, which no word of a name is; `in` is one in brackets alone. */
function isForeignUnit(word: string): boolean {
  return word === 'in' || (word !== '' && folded(word) === '');
}

/** A unit at the end of a name, in brackets or as a word by itself. */
function withoutUnit(name: string): Pick<NameParts, 'unit'> & { readonly rest: string } {
  for (const form of [inBrackets, atEnd]) {
    const match = form.exec(name.slice(-40));
    const word = match?.[1]?.trim() ?? '';
    const code = unitWords.get(word.toLowerCase());
    if (match === null || (code === undefined && !(form === inBrackets && isForeignUnit(word))))
      continue;
    return { rest: name.slice(0, name.length - match[0].length), unit: { code: code ?? '', word } };
  }
  return { rest: name };
}
