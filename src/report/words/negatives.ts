/** How the absence of signs is put in one language: as words that deny, never the sign alone. */
export interface Negatives {
  /** A word to put before the name of the sign, and the codes of the signs it fits, with blanks between. */
  readonly before: Readonly<Record<string, string>>;
  /** Words that deny: no end of a line parts them from the word behind, which alone reads as if it were so. */
  readonly denying: readonly string[];
  /** Whether the name begins with a small letter behind that word. */
  readonly lowered: boolean;
  /** Signs that take other words, by code. */
  readonly own: Readonly<Record<string, string>>;
}

/** Says that a sign is not there, given its code, its name, and the words for signs without an entry. */
export function createNegator(
  { before, lowered, own, denying }: Negatives,
  notFound: string,
): (code: string, name: string) => string {
  const words = new Map(
    Object.entries(before).flatMap(([word, codes]) =>
      codes
        .trim()
        .split(/\s+/)
        .map((code) => [code, word] as const),
    ),
  );
  const parted = new RegExp(`(?<!\\p{L})(${denying.join('|')}) `, 'giu');
  return (code, name) => phrase(code, name).replace(parted, '$1\u00a0');

  function phrase(code: string, name: string): string {
    if (Object.hasOwn(own, code)) return own[code] ?? name;
    const word = words.get(code);
    if (word === undefined) return `${notFound}: ${name}`;
    return `${word} ${lowered ? name.charAt(0).toLowerCase() + name.slice(1) : name}`;
  }
}
