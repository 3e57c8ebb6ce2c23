import { XHTML } from '../../fhir/names/systems.ts';
import type { Severity } from '../../issues/issue.ts';

interface AttributeFault {
  readonly message: string;
  readonly severity: Severity;
}

const reference = /&(?:(amp|lt|gt|quot|apos)|#(\d{1,7})|#x([0-9A-Fa-f]{1,6}));/g;

const named: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
};

/** An attribute with its references resolved; `undefined` where one is none that XML has. */
export function plainAttribute(raw: string): string | undefined {
  if (!raw.includes('&')) return raw;
  if (raw.replace(reference, '').includes('&')) return undefined;
  return raw.replace(reference, (_, name: string | undefined, decimal: string, hex: string) => {
    if (name !== undefined) return named[name] ?? '';
    const code = decimal === undefined ? Number.parseInt(hex, 16) : Number(decimal);
    return code < 0x110000 ? String.fromCodePoint(code) : '\uFFFD';
  });
}

/** What is wrong with the value of an attribute; a link within the narrative is looked at elsewhere. */
export function attributeFaults(name: string, value: string): readonly AttributeFault[] {
  if (name === 'xmlns') return value === XHTML ? [] : [error('the namespace is not that of XHTML')];
  if (name === 'href' || name === 'src') return linkFaults(name, value);
  return name === 'style' ? styleFaults(value) : [];
}

function error(message: string): AttributeFault {
  return { message, severity: 'error' };
}

const activeScheme = /^(?:javascript|vbscript):|^data:(?:text\/html|image\/svg)/i;

function linkFaults(name: string, value: string): AttributeFault[] {
  // Browsers drop control characters and spaces before they look at the scheme.
  const bare = value.replace(/[\s\p{Cc}]/gu, '');
  if (activeScheme.test(bare)) return [error('a link with active content')];
  if (bare !== value) {
    const message = 'a URL with a space or control character';
    // Browsers pass over it in data, and HL7's own pages of definitions have it there.
    return [{ message, severity: /^data:/i.test(value) ? 'warning' : 'error' }];
  }
  return name === 'src' && /^https?:/i.test(value)
    ? [{ message: 'an image from outside the resource', severity: 'warning' }]
    : [];
}

function styleFaults(value: string): AttributeFault[] {
  const bare = value.replace(/[\s\\]/g, '').toLowerCase();
  // A comment can split a word that a browser puts together again.
  if (/\/\*|expression\(|javascript:|vbscript:|behavior:|-moz-binding/.test(bare)) {
    return [error('a style with active content')];
  }
  return /url\((?!['"]?(?:data:|#))|@import/.test(bare)
    ? [{ message: 'a style that loads something from outside the resource', severity: 'warning' }]
    : [];
}
