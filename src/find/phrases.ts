import type { Catalogue } from '../terminology/catalogue.ts';
import { type LexiconTable, type LexiconWords, lexiconTables } from '../terminology/lexicon.ts';
import { lexicon } from '../terminology/tables/lexicon.ts';

/** What a code can be looked for as. */
export type FindKind = 'region' | 'sign' | 'point' | 'measure' | 'scale' | 'symptom' | 'reason';

/** Languages in which there are words. */
export type FindLanguage = 'en' | 'de';

/** Where a phrase comes from: a display, a code, an abbreviation or another word for the row. */
export type PhraseUse = 'display' | 'code' | 'abbreviation' | 'synonym';

/** One way to name a row of the catalogue. */
export interface Phrase {
  readonly kind: FindKind;
  readonly code: string;
  readonly text: string;
  readonly use: PhraseUse;
  /** Codes and abbreviations are of no language. */
  readonly language?: FindLanguage;
}

/** One row with all of its phrases. */
export interface Entry {
  readonly kind: FindKind;
  readonly code: string;
  readonly display: string;
  /** German display, where there is one. */
  readonly german?: string;
  readonly phrases: readonly Phrase[];
}

export const kindOf: Readonly<Record<LexiconTable, FindKind>> = {
  regions: 'region',
  findings: 'sign',
  testPoints: 'point',
  measures: 'measure',
  scales: 'scale',
  symptoms: 'symptom',
  reasons: 'reason',
};

/** Words of an adopter, by table and code. */
export type FurtherWords = {
  readonly [Table in LexiconTable]?: { readonly [code: string]: readonly string[] };
};

/** Every row of a catalogue that can be looked for, an adopter's own with display, code and further words. */
export function entriesOf(catalogue: Catalogue, further: FurtherWords = {}): readonly Entry[] {
  return lexiconTables.flatMap((table) => {
    const more = new Map(Object.entries(further[table] ?? {}));
    return rowsOf(catalogue, table).map(({ code, display }) =>
      withFurther(entry(kindOf[table], code, display, wordsOf(table, code)), more.get(code)),
    );
  });
}

function withFurther(known: Entry, words: readonly string[] = []): Entry {
  const { kind, code } = known;
  const phrases = words.map((text): Phrase => ({ kind, code, text, use: 'synonym' }));
  return phrases.length === 0 ? known : { ...known, phrases: [...known.phrases, ...phrases] };
}

/** A range or cut-off is no measure of its own, and what is recorded as a scale or test is found there. */
function rowsOf(
  catalogue: Catalogue,
  table: LexiconTable,
): readonly { readonly code: string; readonly display: string }[] {
  if (table !== 'measures') return [...catalogue[table].values()];
  return [...catalogue.measures.values()].filter(
    ({ rangeOf, scale, test }) => (rangeOf ?? scale ?? test) === undefined,
  );
}

function wordsOf(table: LexiconTable, code: string): LexiconWords | undefined {
  return Object.hasOwn(lexicon[table], code) ? lexicon[table][code] : undefined;
}

function entry(
  kind: FindKind,
  code: string,
  display: string,
  words: LexiconWords | undefined,
): Entry {
  const of = { kind, code };
  const synonyms = (language: FindLanguage): Phrase[] =>
    (words?.[language] ?? []).map((text) => ({ ...of, text, use: 'synonym', language }));
  const german = words?.name;
  return {
    ...of,
    display,
    ...(german !== undefined && { german }),
    phrases: [
      { ...of, text: display, use: 'display', language: 'en' },
      ...(german === undefined
        ? []
        : [{ ...of, text: german, use: 'display', language: 'de' } as const]),
      { ...of, text: code, use: 'code' },
      ...synonyms('en'),
      ...synonyms('de'),
      ...(words?.short ?? []).map((text): Phrase => ({ ...of, text, use: 'abbreviation' })),
    ],
  };
}
