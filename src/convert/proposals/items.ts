import { termsOf } from '../../find/fold.ts';
import type { Code } from '../../model/primitive.ts';
import type { Span } from '../narrative/sentences.ts';
import { type NamedSide, sideOfWord } from '../narrative/side-words.ts';
import { type Token, tokensIn } from '../narrative/tokens.ts';
import * as words from '../narrative/words.ts';
import type { Match, PhraseIndex } from '../suggest/names/phrase-index.ts';

/** What a word or phrase of a sentence is. */
export type Item = Span &
  (
    | { readonly is: 'sign'; readonly codes: readonly Code[] }
    | { readonly is: 'region'; readonly codes: readonly Code[] }
    | { readonly is: 'side'; readonly side: NamedSide }
    | { readonly is: 'filler'; readonly turns: boolean }
    | { readonly is: Plain }
  );

type Plain =
  | 'denial'
  | 'without'
  | 'denial-behind'
  | 'not'
  | 'nor'
  | 'or'
  | 'and'
  | 'but'
  | 'evidence'
  | 'affirmation'
  | 'normal'
  | 'modifier'
  | 'number'
  | 'length'
  | 'comma'
  | 'colon'
  | 'unknown';

/** Most words of a phrase. */
const MOST_WORDS = 5;

/** The items of a sentence, in its order; what is not known is said to be so. */
export function itemsIn(text: string, { start, end }: Span, index: PhraseIndex): readonly Item[] {
  const tokens = tokensIn(text, start, end);
  const items: Item[] = [];
  let at = 0;
  while (at < tokens.length) {
    const token = tokens[at];
    if (token === undefined) break;
    const marks = gapItem(token, tokens, at, items);
    if (marks !== undefined) items.push(marks);
    const { item, length } = phraseAt(text, tokens, at, index);
    items.push(item);
    at += length;
  }
  const last = tokens.at(-1);
  const tail = text.slice(last?.end ?? start, end);
  // A question asks, and a sign behind the last word can be anything: "ptosis -", "ptosis ?".
  if (!/^[\s.;!)"”]*$/.test(tail)) items.push({ start: last?.end ?? start, end, is: 'unknown' });
  return items;
}

/** What the characters between two words say. */
function gapItem(
  token: Token,
  tokens: readonly Token[],
  at: number,
  items: readonly Item[],
): Item | undefined {
  const place = { start: token.start - token.gap.length, end: token.start };
  const last = items.at(-1);
  // The full stop of `re.` is no end.
  const gap = last?.is === 'side' && tokens[at - 1]?.point ? token.gap.slice(1) : token.gap;
  if (/^\s*$/.test(gap)) return undefined;
  if (at === 0) return /^[\s("„“]*$/.test(gap) ? undefined : { ...place, is: 'unknown' };
  if (/^\s*\)?\s*[,()]\s*\(?\s*$/.test(gap) || /^\s+[-–]\s+$/.test(gap)) {
    return isSideInBrackets(token, tokens, at) ? undefined : { ...place, is: 'comma' };
  }
  return { ...place, is: /^\s*:\s*$/.test(gap) ? 'colon' : 'unknown' };
}

/** "ptosis (left)" is no more than "ptosis left". */
function isSideInBrackets(token: Token, tokens: readonly Token[], at: number): boolean {
  if (!/^\s*\(\s*$/.test(token.gap) || sideOfWord(token.text, token.point) === undefined) {
    return false;
  }
  const next = tokens[at + 1];
  return next === undefined || /^\.?\s*\)/.test(next.gap);
}

function phraseAt(
  text: string,
  tokens: readonly Token[],
  at: number,
  index: PhraseIndex,
): { readonly item: Item; readonly length: number } {
  const first = tokens[at] as Token; // the caller stands at a token
  for (let length = Math.min(MOST_WORDS, tokens.length - at); length > 0; length -= 1) {
    const window = tokens.slice(at, at + length);
    const last = window.at(-1) ?? first;
    if (window.slice(1).some(({ gap }) => !/^[\s-]+$/.test(gap))) continue;
    if (window.some((token) => isClosed(token))) continue;
    // Words that tell nothing apart are no part of a phrase at its ends: "ptosis and" is not ptosis.
    if (length > 1 && (isLoose(first) || isLoose(last))) continue;
    if (length === 1 && plainOf(first) !== undefined) continue;
    const item = matched(text, { start: first.start, end: last.end }, index);
    if (item !== undefined) return { item, length };
  }
  return { item: { start: first.start, end: first.end, ...single(first) }, length: 1 };
}

/** Words that stand in no phrase: they decide what it says. */
function isClosed(token: Token): boolean {
  return (
    sideOfWord(token.text, token.point) !== undefined ||
    [words.denials, words.withouts, words.nots, words.nors].some((set) => set.has(token.low))
  );
}

const loose: ReadonlySet<string> = new Set(['filler', 'and', 'or', 'but', 'evidence', 'nor']);

function isLoose(token: Token): boolean {
  return loose.has(plainOf(token)?.is ?? '');
}

function matched(text: string, span: Span, index: PhraseIndex): Item | undefined {
  const piece = text.slice(span.start, span.end);
  const found = index
    .matches(termsOf(piece))
    .filter(({ phrase }) => phrase.use !== 'abbreviation' || phrase.text === piece)
    .filter(({ phrase }) => !tokensIn(phrase.text).some(isClosed));
  if (found.length === 0) return undefined;
  const [signs, regions] = [codesOf(found, 'sign'), codesOf(found, 'region')];
  if (signs.length > 0 && regions.length === 0) return { ...span, is: 'sign', codes: signs };
  if (regions.length > 0 && signs.length === 0) return { ...span, is: 'region', codes: regions };
  return { ...span, is: 'unknown' };
}

function codesOf(found: readonly Match[], kind: 'sign' | 'region'): readonly Code[] {
  return found.filter(({ entry }) => entry.kind === kind).map(({ entry }) => entry.code);
}

type Single = Item extends infer One ? (One extends Item ? Omit<One, keyof Span> : never) : never;

function single(token: Token): Single {
  const side = sideOfWord(token.text, token.point);
  if (side !== undefined) return { is: 'side', side };
  const wide = words.wideRegions.get(token.low);
  return plainOf(token) ?? (wide ? { is: 'region', codes: wide } : { is: 'unknown' });
}

const plain: readonly (readonly [ReadonlySet<string>, Plain])[] = [
  [words.denials, 'denial'],
  [words.withouts, 'without'],
  [words.denialsBehind, 'denial-behind'],
  [words.nots, 'not'],
  [words.nors, 'nor'],
  [words.ors, 'or'],
  [words.ands, 'and'],
  [words.buts, 'but'],
  [words.evidence, 'evidence'],
  [words.affirmations, 'affirmation'],
  [words.normals, 'normal'],
  [words.modifiers, 'modifier'],
  [words.lengths, 'length'],
];

function plainOf(token: Token): Single | undefined {
  const { low } = token;
  if (/^\p{N}/u.test(token.text)) {
    // Nought millimetres of something are none of it.
    return { is: /^[0.,]+$/.test(token.text) ? 'unknown' : 'number' };
  }
  const found = plain.find(([set]) => set.has(low));
  if (found !== undefined) return { is: found[1] };
  return words.fillers.has(low) ? { is: 'filler', turns: words.turning.has(low) } : undefined;
}
