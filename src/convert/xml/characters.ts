/** Text with its references resolved; `unknown` counts those left as they stood. */
export interface ResolvedText {
  readonly text: string;
  readonly unknown: number;
}

/** @see https://www.w3.org/TR/xml/#sec-predefined-ent */
const predefined: ReadonlyMap<string, string> = new Map([
  ['amp', '&'],
  ['lt', '<'],
  ['gt', '>'],
  ['quot', '"'],
  ['apos', "'"],
]);

const reference = /&(?:#(\d{1,7})|#x([0-9A-Fa-f]{1,6})|([A-Za-z_:][\w:.-]{0,60}));/g;

/**
 * Resolves the five predefined entities and character references. No entity is ever looked up: one
 * that a document type would declare stays as it stands and is counted.
 * @see https://www.w3.org/TR/xml/#sec-references
 */
export function resolveReferences(raw: string): ResolvedText {
  if (!raw.includes('&')) return { text: raw, unknown: 0 };
  let unknown = 0;
  const text = raw.replace(
    reference,
    (whole: string, decimal?: string, hex?: string, name?: string) => {
      const found = name === undefined ? character(decimal, hex) : predefined.get(name);
      if (found === undefined) unknown += 1;
      return found ?? whole;
    },
  );
  return { text, unknown };
}

function character(decimal: string | undefined, hex: string | undefined): string | undefined {
  const code = decimal === undefined ? Number.parseInt(hex ?? '', 16) : Number(decimal);
  return isXmlCharacter(code) ? String.fromCodePoint(code) : undefined;
}

/** @see https://www.w3.org/TR/xml/#NT-Char */
function isXmlCharacter(code: number): boolean {
  if (code < 0x20) return code === 0x09 || code === 0x0a || code === 0x0d;
  return (
    code <= 0xd7ff || (code >= 0xe000 && code <= 0xfffd) || (code >= 0x10000 && code <= 0x10ffff)
  );
}

/** Whether a text holds a character that XML 1.0 forbids, lone surrogates included. */
export function hasForbiddenCharacter(text: string): boolean {
  for (const character of text) {
    if (!isXmlCharacter(character.codePointAt(0) ?? 0)) return true;
  }
  return false;
}
