import { termsOf } from '../../find/fold.ts';
import { entriesOf, type FindLanguage } from '../../find/phrases.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { answersOf, type SampleField } from '../suggest/guess/sample.ts';
import { wordsOf } from '../suggest/names/name-parts.ts';

export interface LanguageCount {
  readonly language: FindLanguage;
  /** Different words of names and answers that the lexicon has in this language alone. */
  readonly words: number;
}

/** Shorter words are abbreviations, or the same in many languages. */
const SHORTEST = 4;

/** The languages of names and answers, most words first; those without any are left out. */
export function languagesOf(
  fields: readonly SampleField[],
  catalogue: Catalogue,
): readonly LanguageCount[] {
  const vocabulary = vocabularies.get(catalogue) ?? vocabularyOf(catalogue);
  vocabularies.set(catalogue, vocabulary);
  const seen = new Set(
    fields.flatMap((field) =>
      [field.name, ...(answersOf(field) ?? [])].flatMap((text) => termsOf(wordsOf(text).join(' '))),
    ),
  );
  const counts = new Map<FindLanguage, number>();
  for (const word of seen) {
    const [language, ...others] = vocabulary.get(word) ?? [];
    if (language === undefined || others.length > 0) continue;
    counts.set(language, (counts.get(language) ?? 0) + 1);
  }
  return [...counts]
    .map(([language, words]) => ({ language, words }))
    .sort((one, other) => other.words - one.words);
}

type Vocabulary = ReadonlyMap<string, ReadonlySet<FindLanguage>>;

const vocabularies = new WeakMap<Catalogue, Vocabulary>();

function vocabularyOf(catalogue: Catalogue): Vocabulary {
  const vocabulary = new Map<string, Set<FindLanguage>>();
  for (const { phrases } of entriesOf(catalogue)) {
    for (const { text, language } of phrases) {
      if (language === undefined) continue;
      for (const term of termsOf(text)) {
        if (term.length < SHORTEST) continue;
        vocabulary.set(term, (vocabulary.get(term) ?? new Set()).add(language));
      }
    }
  }
  return vocabulary;
}
