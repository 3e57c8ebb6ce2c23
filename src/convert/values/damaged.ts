const month = '(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]{0,6}';

/**
 * Forms that spreadsheets make of other values (common practice, no source): "1-2" shown as
 * 02-Jan or Jan-02, a date with a midnight time, a long number in powers of ten, error words,
 * and the hash marks of a column that was too narrow when it was exported.
 */
const forms: readonly RegExp[] = [
  new RegExp(`^\\d{1,2}[-/ .]${month}(?:[-/ .]\\d{2,4})?$`, 'i'),
  new RegExp(`^${month}[-/ .]\\d{1,4}$`, 'i'),
  /^\d{1,2}[-/.]\d{1,2}[-/.]\d{2,4}(?: 0?0:00(?::00)?)?$/,
  /^\d{4}[-/.]\d{1,2}[-/.]\d{1,2}(?:[T ]00:00(?::00(?:\.0+)?)?)?$/,
  /^[+-]?\d(?:[.,]\d+)?E\+?\d{1,3}$/i,
  /^#(?:REF!|VALUE!|N\/A|NAME\?|DIV\/0!|NUM!|NULL!|SPILL!|CALC!)$/i,
  /^#{2,}$/,
];

/** What all forms begin with: a digit, a sign, a hash mark, or the first letter of a month. */
const begins = /^[\d+\-#adfjmnos]/i;

/** Whether a text that should be a word, code or number looks changed by a spreadsheet. */
export function looksDamaged(text: string): boolean {
  const trimmed = text.trim();
  return begins.test(trimmed) && forms.some((form) => form.test(trimmed));
}
