import { termsOf } from '../../../find/fold.ts';
import { type Entry, entriesOf, type Phrase } from '../../../find/phrases.ts';
import type { Catalogue } from '../../../terminology/catalogue.ts';
import { abbreviations } from './name-words.ts';
import { type Respell, respeller } from './spelling.ts';
import { keyOf, useVocabulary } from './use-words.ts';

export interface Match {
  readonly entry: Entry;
  readonly phrase: Phrase;
}

/** Every phrase of a catalogue and the lexicon, by its words. */
export interface PhraseIndex {
  /** Rows that some words name, all of the words and no others, in any order or written as one. */
  readonly matches: (terms: readonly string[]) => readonly Match[];
  readonly respell: Respell;
}

/** The phrases are put together once for a catalogue; words are respelt anew in each call. */
export function phraseIndex(catalogue: Catalogue): PhraseIndex {
  const known = indexes.get(catalogue) ?? indexOf(catalogue);
  indexes.set(catalogue, known);
  return { matches: known.matches, respell: respeller(known.vocabulary) };
}

interface Index extends Pick<PhraseIndex, 'matches'> {
  readonly vocabulary: ReadonlySet<string>;
}

const indexes = new WeakMap<Catalogue, Index>();

function indexOf(catalogue: Catalogue): Index {
  const byWords = new Map<string, Match[]>();
  const vocabulary = new Set<string>(useVocabulary);
  const add = (key: string, match: Match): void => {
    const known = byWords.get(key) ?? [];
    if (!known.some(({ entry }) => entry === match.entry)) known.push(match);
    byWords.set(key, known);
  };
  for (const entry of entriesOf(catalogue)) {
    for (const phrase of entry.phrases) {
      for (const text of namesIn(phrase.text)) {
        const terms = termsOf(text);
        for (const term of terms) vocabulary.add(term);
        const stems = terms.map(stem);
        add(keyOf(stems), { entry, phrase });
        if (stems.length > 1) add(stems.join(''), { entry, phrase });
      }
    }
  }
  return {
    matches: (terms) => {
      const stems = terms.map(stem);
      const whole = terms.map((term) => stem(abbreviations.get(term) ?? term));
      return (
        byWords.get(keyOf(stems)) ?? byWords.get(stems.join('')) ?? byWords.get(keyOf(whole)) ?? []
      );
    },
    vocabulary,
  };
}

/** `Lid turned out (ectropion)` is a name as a whole, without its brackets, and by one word in them. */
function namesIn(text: string): readonly string[] {
  const [, before = '', inside = '', after = ''] = /^([^()]*)\(([^()]*)\)(.*)$/.exec(text) ?? [];
  if (inside === '') return [text];
  const isWord = /^\p{L}{4,}$/u.test(inside);
  return [text, before + after, ...(isWord ? [inside] : [])];
}

/** A word without the ending of its plural, as far as that shows without a dictionary. */
function stem(term: string): string {
  if (term.length > 4 && /[^suic]s$/.test(term)) return term.slice(0, -1);
  if (term.length > 6 && /[^e]en$/.test(term)) return term.slice(0, -2);
  return term;
}
