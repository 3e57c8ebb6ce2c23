import { shownText } from '../../../issues/shown-text.ts';
import type { Tally } from './tally.ts';

/** What a run did, for machines. */
export interface Summary extends Tally {
  readonly format: 'face-neck-conversion/1';
  /** Inputs by name, in the order they were read. */
  readonly inputs: readonly string[];
}

/** Reasons and issues that are listed in the text. */
const TOP = 20;

/**
 * Writes the summary of a run for people, without any value of the data.
 *
 * @param summary From `convertFiles`.
 * @returns Lines of text: exams, fields, lines written, reasons for the quarantine, and issues by
 *   code.
 * @example
 * const settings = { mapping, inputs: ['archive'], out: 'converted' };
 * const { summary } = await convertFiles(settings, { now: Date.now });
 * if (summary) console.log(summaryText(summary));
 */
export function summaryText(summary: Summary): string {
  const { exams, fields, lines, reasons, issues, inputs } = summary;
  const parts = [
    `${inputs.length} input(s)`,
    `${exams.read} exam(s) read: ${exams.converted} converted, ${exams.quarantined} in quarantine`,
    `${fields.fields} field(s): ${fields.coded} coded, ${fields.verbatim} kept as text, ` +
      `${fields.blank} blank, ${fields.layout} layout, ${fields.administrative} administrative, ` +
      `${fields.quarantined} in quarantine`,
    ...section('Lines written', lines),
    ...section('Why exams are in quarantine', top(reasons)),
    ...section('Issues', top(issues)),
  ];
  return `${parts.join('\n')}\n`;
}

function section(title: string, counts: { readonly [name: string]: number }): string[] {
  const rows = Object.entries(counts);
  if (rows.length === 0) return [];
  return [
    '',
    title,
    ...rows.map(([name, count]) => `${String(count).padStart(10)}  ${shownText(name)}`),
  ];
}

/** The largest counts; equal ones in order of names. */
function top(counts: { readonly [name: string]: number }): { readonly [name: string]: number } {
  const rows = Object.entries(counts).sort(
    ([one, left], [other, right]) => right - left || (one < other ? -1 : 1),
  );
  const rest = rows.slice(TOP).reduce((sum, [, count]) => sum + count, 0);
  return Object.fromEntries([
    ...rows.slice(0, TOP),
    ...(rest > 0 ? [[`in ${rows.length - TOP} other kinds`, rest] as const] : []),
  ]);
}
