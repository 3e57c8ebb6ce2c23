import type { FindKind } from '../../../find/phrases.ts';
import { regionFilter } from '../../../find/region-filter.ts';
import type { Catalogue } from '../../../terminology/catalogue.ts';
import type { Target } from '../../mapping/target.ts';
import { kindsByValues, valueKind } from '../guess/value-kind.ts';
import type { ProposalReason } from '../proposal.ts';
import { makeTarget } from '../targets.ts';
import { type NameParts, nameParts } from './name-parts.ts';
import { emptyWords, modalityWords } from './name-words.ts';
import type { Match, PhraseIndex } from './phrase-index.ts';
import {
  type Meaning,
  type Naming,
  nothing,
  open,
  type Placement,
  withSideAndUnit,
} from './side-and-unit.ts';

/**
 * What a field stands for by its names: its name and what it is called besides, such as the last step of
 * a path or the words beside a code. All words of one of them must be one phrase of the lexicon, or a
 * sign and a place where it can be. A side is taken from plain words alone, a unit only as a name states
 * it; what any of the names could deny, and what means several things, is left open with the question.
 */
export function placeName(
  names: readonly string[],
  texts: readonly string[],
  naming: Naming,
): Placement {
  const all = names.map((name) => nameParts(name, naming.pairs));
  for (const parts of all) {
    const meaning = parts.about.length === 0 ? undefined : meaningOf(parts, texts, naming);
    if (meaning === undefined) continue;
    const negation = all.find((one) => one.negation !== undefined)?.negation;
    if (negation !== undefined) return open({ question: 'negation', word: negation });
    const sides = all.flatMap(({ side }) => side ?? []);
    const isTold = new Set(sides.map(({ side }) => side)).size <= 1;
    if (!isTold || all.some(({ twoSides }) => twoSides)) return open({ question: 'two-sides' });
    if ('codes' in meaning) return open({ question: 'which', codes: meaning.codes });
    const [side] = sides;
    const sided = side === undefined ? parts : { ...parts, side };
    return withSideAndUnit(meaning, sided, texts, naming);
  }
  return nothing;
}

type Several = { readonly codes: readonly string[] };

/** Each way of reading a name, the nearest first, until one gives a meaning or several. */
function meaningOf(
  { about, terms }: NameParts,
  texts: readonly string[],
  { index, catalogue }: Naming,
): Meaning | Several | undefined {
  const respelt = about.map(index.respell);
  const changed = about.flatMap((word, at): ProposalReason[] => {
    const as = respelt[at] ?? word;
    return as === word ? [] : [{ reason: 'respelt', word, as }];
  });
  const ways: readonly (readonly [words: readonly string[], factor: number])[] = [
    [terms, 1],
    [about, 1],
    [about.filter((word) => !emptyWords.has(word)), 0.9],
    [respelt, 0.8],
  ];
  for (const [words, factor] of ways) {
    if (words.length === 0) continue;
    const found =
      wholePhrase(words, texts, index, catalogue) ??
      signAndPlace(words, texts, index, catalogue) ??
      pointAndModality(words, index, catalogue);
    if (found === undefined) continue;
    if ('codes' in found) return found;
    const reasons = words === respelt ? [...found.reasons, ...changed] : found.reasons;
    return { ...found, score: found.score * factor, reasons };
  }
  return undefined;
}

function wholePhrase(
  words: readonly string[],
  texts: readonly string[],
  index: PhraseIndex,
  catalogue: Catalogue,
): Meaning | Several | undefined {
  const all = index.matches(words).filter(({ entry }) => entry.kind !== 'reason');
  const { possible, likely } = kindsByValues(texts);
  const fitting = all.filter(({ entry }) => possible.includes(entry.kind));
  const told = fitting.filter(({ entry }) => likely.includes(entry.kind));
  const left = preferred(told.length > 0 ? told : fitting);
  const [match] = left;
  if (match === undefined) return undefined;
  if (left.length > 1) return { codes: left.map(codeOf) };
  const target = makeTarget(match.entry.kind, match.entry.code, catalogue);
  if (target === undefined) return undefined;
  const byValues: readonly ProposalReason[] =
    all.length > 1 ? [{ reason: 'values', values: looksOf(texts) }] : [];
  return { target, score: scoreOf(match), reasons: [wordReason(match), ...byValues] };
}

function looksOf(texts: readonly string[]): 'numbers' | 'words' {
  return valueKind(texts) === 'words' ? 'words' : 'numbers';
}

/**
 * A display, code or abbreviation goes before a synonym. Whether something was told or found is no
 * matter of words: a sign and a symptom of one name stay beside each other.
 */
function preferred(matches: readonly Match[]): readonly Match[] {
  const kinds = new Set(matches.map(({ entry }) => entry.kind));
  if (kinds.has('sign') && kinds.has('symptom')) return matches;
  const proper = matches.filter(({ phrase }) => phrase.use !== 'synonym');
  return proper.length > 0 ? proper : matches;
}

/** `scar forehead`, `Stirn Narbe`: one part is a sign, the other a region where it can be. */
function signAndPlace(
  words: readonly string[],
  texts: readonly string[],
  index: PhraseIndex,
  catalogue: Catalogue,
): Meaning | Several | undefined {
  if (!kindsByValues(texts).possible.includes('sign')) return undefined;
  const found = new Map<string, Meaning>();
  for (const [sign, region] of pairsOf(words, index)) {
    if (!regionFilter(region.entry.code, catalogue)(sign.entry)) continue;
    const target = makeTarget('sign', sign.entry.code, catalogue, region.entry.code);
    if (target === undefined) continue;
    found.set(`${codeOf(sign)} ${region.entry.code}`, {
      target,
      score: scoreOf(sign) * scoreOf(region) * 0.95,
      reasons: [wordReason(sign), wordReason(region)],
    });
  }
  const [first, ...more] = found.values();
  return more.length > 0 ? { codes: [...found.keys()] } : first;
}

/** Signs and regions that the two parts of a name are, wherever it is cut. */
function pairsOf(words: readonly string[], index: PhraseIndex): readonly [Match, Match][] {
  const cuts = words
    .slice(1)
    .map((_, at) => [words.slice(0, at + 1), words.slice(at + 1)] as const);
  const halves = cuts.flatMap(([start, end]) => [
    [start, end],
    [end, start],
  ]);
  return halves.flatMap(([sign = [], place = []]) => {
    const regions = preferred(ofKind(index.matches(place), 'region'));
    return preferred(ofKind(index.matches(sign), 'sign')).flatMap((one) =>
      regions.map((region): [Match, Match] => [one, region]),
    );
  });
}

function ofKind(matches: readonly Match[], kind: FindKind): readonly Match[] {
  return matches.filter(({ entry }) => entry.kind === kind);
}

function pointAndModality(
  words: readonly string[],
  index: PhraseIndex,
  catalogue: Catalogue,
): Meaning | undefined {
  const modality = words.map((word) => modalityWords.get(word)).find((code) => code !== undefined);
  const rest = words.filter((word) => !modalityWords.has(word));
  if (modality === undefined || rest.length === words.length || rest.length === 0) return undefined;
  const points = ofKind(index.matches(rest), 'point').filter(({ entry }) =>
    catalogue.testPoints.get(entry.code)?.modalities?.includes(modality),
  );
  const [match, ...more] = points;
  if (match === undefined || more.length > 0) return undefined;
  const target = makeTarget('point', match.entry.code, catalogue);
  if (target === undefined) return undefined;
  return {
    target: { ...target, modality } as Target, // a point with modalities is one of sensation
    score: scoreOf(match),
    reasons: [wordReason(match)],
  };
}

function codeOf({ entry }: Match): string {
  return `${entry.kind}/${entry.code}`;
}

function scoreOf({ phrase }: Match): number {
  return phrase.use === 'synonym' ? 0.95 : 1;
}

function wordReason(match: Match): ProposalReason {
  const { text, use } = match.phrase;
  return { reason: 'word', word: text, use, of: codeOf(match) };
}
