/** Longest text that is looked at; a name or question is shorter, and the work goes with its length. */
const LONGEST = 200;

/**
 * A text as it is compared: small letters without marks, `ae`, `oe` and `ue` as `a`, `o` and `u`, so
 * that Schläfe, Schlaefe and Schlafe are one, and everything but letters and digits a space.
 */
export function folded(text: string): string {
  return text
    .slice(0, LONGEST)
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replaceAll('ß', 'ss')
    .replace(/([aou])e/g, '$1')
    .replace(/['’]s\b/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/** Words that stand in most names and tell none apart, folded. */
const fillers: ReadonlySet<string> = new Set([
  ...['a', 'an', 'and', 'at', 'by', 'for', 'in', 'of', 'on', 'the', 'to', 'with'],
  ...['am', 'an', 'auf', 'bei', 'das', 'dem', 'den', 'der', 'des', 'die', 'ein', 'eine', 'im'],
  ...['mit', 'und', 'von', 'zu', 'zum', 'zur'],
]);

/** The words of a text that tell it apart; all of them where there are no others. */
export function termsOf(text: string): readonly string[] {
  const terms = folded(text)
    .split(' ')
    .filter((term) => term !== '');
  const telling = terms.filter((term) => !fillers.has(term));
  return telling.length > 0 ? telling : terms;
}
