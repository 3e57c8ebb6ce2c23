/** Tables whose rows people look for by words. */
export const lexiconTables = [
  'regions',
  'findings',
  'testPoints',
  'measures',
  'scales',
  'symptoms',
  'reasons',
] as const;

export type LexiconTable = (typeof lexiconTables)[number];

/** Words for one row besides its English display. Where each comes from stands in /terminology/lexicon. */
export interface LexiconWords {
  /** German display. */
  readonly name: string;
  /** Synonyms and lay words in English. */
  readonly en?: readonly string[];
  readonly de?: readonly string[];
  /** Abbreviations, of any language. */
  readonly short?: readonly string[];
}

export type Lexicon = {
  readonly [Table in LexiconTable]: { readonly [code: string]: LexiconWords };
};
