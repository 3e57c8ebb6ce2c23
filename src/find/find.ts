import MiniSearch from 'minisearch';
import { builtInCatalogue, type Catalogue } from '../terminology/catalogue.ts';
import { folded, termsOf } from './fold.ts';
import {
  type Entry,
  entriesOf,
  type FindKind,
  type FindLanguage,
  type FurtherWords,
  type Phrase,
  type PhraseUse,
} from './phrases.ts';
import { regionFilter } from './region-filter.ts';

/** What is looked for, and where. */
export interface FindOptions {
  /** Default: all kinds. */
  readonly kind?: FindKind | readonly FindKind[];
  /** Code of a region: only what can be said of it, of a part of it or of what it is part of. */
  readonly region?: string;
  /** Words of this language, codes and abbreviations alone, and displays in it. Default: words of all. */
  readonly language?: FindLanguage;
  /** Most codes in the answer. Default: 10. */
  readonly limit?: number;
  /** Default: the built-in catalogue. An adopter's own rows are found by display, code and `words`. */
  readonly catalogue?: Catalogue;
  /** Further words for rows, by table and code; of no language. */
  readonly words?: FurtherWords;
}

/** One code that was found. */
export interface Found {
  readonly kind: FindKind;
  readonly code: string;
  /** In the language that was asked for, otherwise in English. */
  readonly display: string;
  /** The name or word that the question was most like, and what it is to the code. */
  readonly word: string;
  readonly use: PhraseUse;
  /** 1: the very word. Less the more letters or words differ; it only orders one answer. */
  readonly score: number;
}

/**
 * Finds codes by what people call them: displays, synonyms, lay words and abbreviations in English
 * and German, with typing errors.
 *
 * @param query A few words; of a long text the first 200 characters count.
 * @param options Kind, region, language, most answers, and the catalogue.
 * @returns Codes, the likeliest first; none where nothing is near.
 * @example
 * const [best] = find('droopy eyelid', { kind: 'sign' });
 */
export function find(query: string, options: FindOptions = {}): readonly Found[] {
  const { limit = 10, language } = options;
  const searched = searchedOf(options.catalogue ?? builtInCatalogue, options.words);
  const ranked = [...bestPhrases(query, options, searched)].sort(
    ([, one], [, other]) => other.score - one.score,
  );
  const asked = folded(query);
  return ranked.slice(0, Math.max(0, limit)).map(([entry, { phrase }]) => ({
    kind: entry.kind,
    code: entry.code,
    display: (language === 'de' ? entry.german : undefined) ?? entry.display,
    word: phrase.text,
    use: phrase.use,
    score: likeness(asked, folded(phrase.text)),
  }));
}

/** Of each row that is asked for the phrase that the question is most like. */
function bestPhrases(
  query: string,
  options: FindOptions,
  { index, entries, vocabulary }: Searched,
): ReadonlyMap<Entry, { readonly phrase: Phrase; readonly score: number }> {
  const catalogue = options.catalogue ?? builtInCatalogue;
  const isAskedFor = filterOf(options, catalogue);
  const asked = folded(query);
  const best = new Map<Entry, { readonly phrase: Phrase; readonly score: number }>();
  const terms = withParts(termsOf(query), vocabulary);
  const hits = index.search(terms.join(' '), searching);
  const placed = regionTerms(hits, entries);
  for (const { id, score: raw, queryTerms } of hits) {
    const found = entries[Number(id)];
    if (found === undefined || !isAskedFor(found)) continue;
    const { entry, phrase } = found;
    const matched = new Set(queryTerms);
    const elsewhere = entry.kind === 'sign' ? restNamed(entry.code, matched, placed, catalogue) : 0;
    const score = raw * (matched.size + elsewhere) * (folded(phrase.text) === asked ? EXACT : 1);
    if (score > (best.get(entry)?.score ?? 0)) best.set(entry, { phrase, score });
  }
  return best;
}

function filterOf(
  { kind, region, language }: FindOptions,
  catalogue: Catalogue,
): (found: Searched['entries'][number]) => boolean {
  const kinds = kind === undefined ? undefined : new Set([kind].flat());
  const inRegion = region === undefined ? () => true : regionFilter(region, catalogue);
  return ({ entry, phrase }) =>
    kinds?.has(entry.kind) !== false &&
    (language === undefined || (phrase.language ?? language) === language) &&
    inRegion(entry);
}

type Hits = readonly { readonly id: unknown; readonly queryTerms: readonly string[] }[];

/** Words of the question that name each region. */
function regionTerms(
  hits: Hits,
  entries: Searched['entries'],
): ReadonlyMap<string, ReadonlySet<string>> {
  const terms = new Map<string, Set<string>>();
  for (const { id, queryTerms } of hits) {
    const { entry } = entries[Number(id)] ?? {};
    if (entry?.kind !== 'region') continue;
    const known = terms.get(entry.code) ?? new Set();
    terms.set(entry.code, known);
    for (const term of queryTerms) known.add(term);
  }
  return terms;
}

/** Most words of the rest of a question that name a place where a sign can be. */
function restNamed(
  sign: string,
  matched: ReadonlySet<string>,
  placed: ReadonlyMap<string, ReadonlySet<string>>,
  { findings }: Catalogue,
): number {
  let most = 0;
  for (const region of findings.get(sign)?.regions ?? []) {
    let rest = 0;
    for (const term of placed.get(region) ?? []) if (!matched.has(term)) rest += 1;
    most = Math.max(most, rest);
  }
  return most;
}

/** The very word goes before any that only holds it. */
const EXACT = 10;

const searching = {
  fuzzy: (term: string) => (term.length < 4 ? false : term.length < 6 ? 1 : 2),
  prefix: (term: string) => term.length >= 3,
  maxFuzzy: 2,
  weights: { fuzzy: 0.45, prefix: 0.6 },
};

interface Searched {
  readonly index: MiniSearch<{ readonly id: number; readonly text: string }>;
  readonly entries: readonly { readonly entry: Entry; readonly phrase: Phrase }[];
  readonly vocabulary: ReadonlySet<string>;
}

/** Made once for words and a catalogue, which never change; it takes some hundredths of a second. */
const made = new WeakMap<FurtherWords, WeakMap<Catalogue, Searched>>();

const noWords: FurtherWords = {};

function searchedOf(catalogue: Catalogue, words: FurtherWords = noWords): Searched {
  const ofWords = made.get(words) ?? new WeakMap<Catalogue, Searched>();
  made.set(words, ofWords);
  const known = ofWords.get(catalogue);
  if (known !== undefined) return known;
  const entries = entriesOf(catalogue, words).flatMap((entry) =>
    entry.phrases.map((phrase) => ({ entry, phrase })),
  );
  const index = new MiniSearch<{ readonly id: number; readonly text: string }>({
    fields: ['text'],
    tokenize: (text) => [...termsOf(text)],
    processTerm: (term) => term,
  });
  index.addAll(entries.map(({ phrase }, id) => ({ id, text: phrase.text })));
  const vocabulary = new Set(entries.flatMap(({ phrase }) => termsOf(phrase.text)));
  const searched = { index, entries, vocabulary };
  ofWords.set(catalogue, searched);
  return searched;
}

/** Shortest part of a compound that is looked for by itself. */
const SHORTEST_PART = 5;

/** Words, and of a compound that no phrase has its longest beginning and end that some phrase has. */
function withParts(terms: readonly string[], vocabulary: ReadonlySet<string>): readonly string[] {
  return terms.flatMap((term) => {
    if (vocabulary.has(term)) return [term];
    const parts: string[] = [term];
    for (let length = term.length - 3; length >= SHORTEST_PART; length -= 1) {
      if (vocabulary.has(term.slice(0, length))) {
        parts.push(term.slice(0, length));
        break;
      }
    }
    for (let length = term.length - 3; length >= SHORTEST_PART; length -= 1) {
      if (vocabulary.has(term.slice(-length))) {
        parts.push(term.slice(-length));
        break;
      }
    }
    return parts;
  });
}

/** Share of the pairs of letters that two texts have in common (Dice's coefficient). */
function likeness(one: string, other: string): number {
  if (one === other) return 1;
  const pairs = (text: string): Map<string, number> => {
    const counts = new Map<string, number>();
    for (let at = 0; at <= text.length; at += 1) {
      const pair = ` ${text} `.slice(at, at + 2);
      counts.set(pair, (counts.get(pair) ?? 0) + 1);
    }
    return counts;
  };
  const [left, right] = [pairs(one), pairs(other)];
  let common = 0;
  for (const [pair, count] of left) common += Math.min(count, right.get(pair) ?? 0);
  return (2 * common) / (one.length + other.length + 2);
}
