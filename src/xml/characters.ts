/** Text with its references resolved; `unknown` counts the ampersands left as they stood. */
export interface ResolvedText {
  readonly text: string;
  readonly unknown: number;
}

/** @see https://www.w3.org/TR/xml/#sec-predefined-ent */
const predefined: ReadonlyMap<string, string> = new Map([
  ['&amp;', '&'],
  ['&lt;', '<'],
  ['&gt;', '>'],
  ['&quot;', '"'],
  ['&apos;', "'"],
]);

/** An ampersand with what could make it a reference that XML itself has. */
const reference = /&(?:#(\d{1,7});|#x([0-9A-Fa-f]{1,6});|[a-z]{2,4};)?/g;

/**
 * Resolves character references and the five entities of XML. No other entity is ever looked up: one
 * that a document type would declare, and an ampersand that begins no reference, stay as they stand
 * and are counted.
 * @see https://www.w3.org/TR/xml/#sec-references
 */
export function resolveReferences(raw: string): ResolvedText {
  if (!raw.includes('&')) return { text: raw, unknown: 0 };
  let unknown = 0;
  const text = raw.replace(reference, (whole: string, decimal?: string, hex?: string) => {
    const found = predefined.get(whole) ?? character(decimal, hex);
    if (found === undefined) unknown += 1;
    return found ?? whole;
  });
  return { text, unknown };
}

function character(decimal: string | undefined, hex: string | undefined): string | undefined {
  if (decimal === undefined && hex === undefined) return undefined;
  const code = decimal === undefined ? Number.parseInt(hex ?? '', 16) : Number(decimal);
  return isXmlCharacter(code) ? String.fromCodePoint(code) : undefined;
}

/** @see https://www.w3.org/TR/xml/#NT-Char */
export function isXmlCharacter(code: number): boolean {
  if (code < 0x20) return code === 0x09 || code === 0x0a || code === 0x0d;
  return (
    code <= 0xd7ff || (code >= 0xe000 && code <= 0xfffd) || (code >= 0x10000 && code <= 0x10ffff)
  );
}

/** The characters that {@link isXmlCharacter} refuses, lone surrogates included. */
const forbidden = /[^\t\n\r -\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/u;

/** Finds fast, without pairs, what may be one; a surrogate is then looked at in its pair. */
const suspect = /[^\t\n\r -\uD7FF\uE000-\uFFFD]/;

/** Place of the first character that XML 1.0 forbids, or -1. */
export function forbiddenCharacter(text: string): number {
  return suspect.test(text) ? text.search(forbidden) : -1;
}

/** Text for a double-quoted attribute; white space other than the space stays what it is. */
export function escapeAttribute(text: string): string {
  return text.replace(/[&<>"\t\n\r]/g, (found) => escapes.get(found) ?? found);
}

const escapes: ReadonlyMap<string, string> = new Map([
  ['&', '&amp;'],
  ['<', '&lt;'],
  ['>', '&gt;'],
  ['"', '&quot;'],
  ['\t', '&#9;'],
  ['\n', '&#10;'],
  ['\r', '&#13;'],
]);
