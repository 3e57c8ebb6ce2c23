import { printable } from '../exams/note.ts';
import type { Misfits } from './misfits.ts';

/**
 * Writes what does not fit as text for a person.
 *
 * @param found From `misfits`.
 * @returns Lines; one that says so where everything fits.
 * @example
 * console.log(misfitsText(misfits(text, mapping)));
 */
export function misfitsText({ missing, unnamed, unlisted, unmet, headless }: Misfits): string {
  const lines = [
    ...(headless ? ['the first row looks like data: name the columns in source.header'] : []),
    ...missing.map(
      ({ name, part, near }) =>
        `not in the export: ${printable(name)} (${part})${near === undefined ? '' : `; perhaps ${printable(near)}`}`,
    ),
    ...unnamed.map(
      ({ name, filled }) => `not in the mapping: ${printable(name)} (${filled} filled)`,
    ),
    ...unlisted.map(
      ({ code, count, near }) =>
        `item not in the mapping: ${printable(code)} (${count})${near === undefined ? '' : `; perhaps ${printable(near)}`}`,
    ),
    ...unmet.map((code) => `item not in the export: ${printable(code)}`),
  ];
  return `${(lines.length === 0 ? ['everything fits'] : lines).join('\n')}\n`;
}
