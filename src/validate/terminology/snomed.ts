import { isSnomedId } from '../../terminology/published/check-digits.ts';

/**
 * Whether a text can be a code of SNOMED CT: an id whose check digit is right, or a postcoordinated
 * expression of such ids. Only the tokens of an expression are looked at, and not how they nest.
 * @see https://confluence.ihtsdotools.org/display/DOCSCG on compositional grammar
 */
export function isSnomedCode(code: string): boolean {
  if (/^\d+$/.test(code)) return isSnomedId(code);
  const bare = code
    .replace(/\|[^|]*\|/g, ' ')
    .replace(/"[^"]*"/g, ' ')
    .replace(/#[+-]?[\d.]+/g, ' ');
  if (!/^\s*(?:===|<<<)?\s*[\d(][\s\d+:=,{}()]*$/.test(bare)) return false;
  const ids = bare.match(/\d+/g) ?? [];
  return ids.length > 0 && ids.every(isSnomedId);
}
