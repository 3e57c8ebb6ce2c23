import { isTable, type Source } from '../mapping/source.ts';
import { datesOf } from '../suggest/guess/guess-dates.ts';
import type { Sample } from '../suggest/guess/sample.ts';

/**
 * Whether what stands as names of columns looks like data: a number, a date, or a word that its own
 * column holds too. Said of a table alone, in which nothing else names the columns.
 */
export function hasNoHeadings(source: Source, { fields }: Sample): boolean {
  if (!isTable(source) || source.syntax === 'fixed' || source.header !== undefined) return false;
  return [...fields.values()].some(
    ({ name, words }) =>
      /^[-+]?\d+(?:[.,]\d+)?$/.test(name) || datesOf([name]).length > 0 || words.includes(name),
  );
}
