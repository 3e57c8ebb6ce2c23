/** Looks words up as a mapping lists them. Blank is the word `""`. */
export interface WordMap<Value> {
  readonly get: (text: string) => Value | undefined;
  readonly has: (text: string) => boolean;
}

/** Words match when they are equal without the white space around them, and in case if asked. */
export function wordMap<Value>(
  words: { readonly [word: string]: Value } | undefined,
  ignoreCase: boolean,
): WordMap<Value> {
  const map = new Map(
    Object.entries(words ?? {}).map(([word, value]) => [folded(word, ignoreCase), value]),
  );
  return {
    get: (text) => map.get(folded(text, ignoreCase)),
    has: (text) => map.has(folded(text, ignoreCase)),
  };
}

/** Words of a table that match the same text; each is told once, as the later of the two. */
export function clashingWords(
  words: { readonly [word: string]: unknown },
  ignoreCase: boolean,
): string[] {
  const seen = new Set<string>();
  return Object.keys(words).filter((word) => {
    const key = folded(word, ignoreCase);
    const clash = seen.has(key);
    seen.add(key);
    return clash;
  });
}

function folded(word: string, ignoreCase: boolean): string {
  const trimmed = word.trim();
  return ignoreCase ? trimmed.toLowerCase() : trimmed;
}
