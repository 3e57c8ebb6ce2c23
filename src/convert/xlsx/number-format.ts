/** What the format of a cell says about the number in it, as far as a reader must know. */
export type NumberForm =
  | { readonly form: 'number' }
  /** Shown by a hundredfold with the sign. */
  | { readonly form: 'percent' }
  /** Shown with at least this many digits: 00123. */
  | { readonly form: 'digits'; readonly least: number }
  /** A day or time, with the parts that are shown. */
  | {
      readonly form: 'date';
      readonly year: boolean;
      readonly month: boolean;
      readonly day: boolean;
      readonly time: boolean;
    }
  /** Hours, minutes or seconds that go on counting: [h]:mm. */
  | { readonly form: 'elapsed' };

export const plainNumber: NumberForm = { form: 'number' };

/**
 * Formats that a workbook names by number and does not write out: percentages, dates and times.
 * @see ECMA-376 part 1, 18.8.30 numFmt
 */
export const builtInFormats: ReadonlyMap<number, string> = new Map([
  [9, '0%'],
  [10, '0.00%'],
  [14, 'mm-dd-yy'],
  [15, 'd-mmm-yy'],
  [16, 'd-mmm'],
  [17, 'mmm-yy'],
  [18, 'h:mm AM/PM'],
  [19, 'h:mm:ss AM/PM'],
  [20, 'h:mm'],
  [21, 'h:mm:ss'],
  [22, 'm/d/yy h:mm'],
  [45, 'mm:ss'],
  [46, '[h]:mm:ss'],
  [47, 'mmss.0'],
]);

/** Quoted and escaped text, fillers, and marks of colour, language and condition. */
const beside = /"[^"]*"|\\.|_.|\*.|\[(?!(?:h+|m+|s+)\])[^\]]*\]/gi;

/** What a format code says of positive numbers. Months and minutes are told apart by their neighbours. */
export function numberForm(code: string): NumberForm {
  const plain = code.slice(0, 1000).replace(beside, '').toLowerCase();
  const [first = ''] = plain.split(';', 1);
  if (/\[(?:h+|m+|s+)\]/.test(first)) return { form: 'elapsed' };
  const digits = /^0{2,15}$/.exec(first);
  if (digits !== null) return { form: 'digits', least: first.length };
  if (first.includes('general') || !/[ymdhs]/.test(first)) {
    return first.includes('%') ? { form: 'percent' } : plainNumber;
  }
  const withoutMarks = first.replace(/am\/pm|a\/p/g, '');
  // m is minutes behind hours and before seconds (ECMA-376 part 1, 18.8.31).
  const months = withoutMarks.replace(/h+[^a-z]*m+/g, 'h').replace(/m+[^a-z]*s+/g, 's');
  return {
    form: 'date',
    year: /[ye]/.test(months),
    month: months.includes('m'),
    day: months.includes('d'),
    time: /[hs]/.test(months),
  };
}
