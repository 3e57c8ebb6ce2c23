/** @see https://www.w3.org/TR/xml/#sec-predefined-ent */
const predefined: ReadonlyMap<string, string> = new Map([
  ['&amp;', '&'],
  ['&lt;', '<'],
  ['&gt;', '>'],
  ['&quot;', '"'],
  ['&apos;', "'"],
]);

/** An ampersand with what could make it a reference. */
const reference = /&(?:#(\d{1,7});|#x([0-9A-Fa-f]{1,6});|[a-z]{2,4};)?/g;

/**
 * Text with its character references and the five entities of XML resolved; undefined where it holds
 * any other, or an ampersand that begins none.
 */
export function resolveReferences(text: string): string | undefined {
  if (!text.includes('&')) return text;
  let sound = true;
  const resolved = text.replace(reference, (whole, decimal?: string, hex?: string) => {
    const found = predefined.get(whole) ?? character(decimal, hex);
    if (found === undefined) sound = false;
    return found ?? whole;
  });
  return sound ? resolved : undefined;
}

function character(decimal: string | undefined, hex: string | undefined): string | undefined {
  if (decimal === undefined && hex === undefined) return undefined;
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
