import { printable } from '../exams/note.ts';
import type { Source } from '../mapping/source.ts';
import type { Proposal } from '../suggest/proposal.ts';
import { meaningText, questionText, reasonText } from '../suggest/proposal-text.ts';
import type { Scan } from './scan.ts';
import type { ScannedField } from './scan-field.ts';

/**
 * Writes a scan as text for a person: a paragraph for each field.
 *
 * @param scan From `scanExport`.
 * @returns Lines without patient data, unless values were asked for.
 * @example
 * console.log(scanText(scanExport(text)));
 */
export function scanText(scan: Scan): string {
  const { exams, records, unread, fields, languages, leftovers, headless } = scan;
  const known = new Map(scan.proposals.map((one) => [`${one.of} ${one.name}`, one]));
  const head = [
    `${sourceText(scan.source)}: ${exams} exams, ${records} records, ${fields.length} fields and items`,
    ...(unread > 0 ? [`${unread} records could not be read`] : []),
    ...(headless ? ['the first row looks like data: name the columns in source.header'] : []),
    ...(languages.length > 0
      ? [
          `languages: ${languages.map(({ language, words }) => `${language} (${words} words)`).join(', ')}`,
        ]
      : []),
    `without a proposal: ${leftovers.length} (${share(leftovers.length, fields.length)})`,
  ];
  const paragraphs = fields.map((field) =>
    fieldText(field, known.get(`${field.of} ${field.name}`)),
  );
  return [...head, ...paragraphs.flatMap((lines) => ['', ...lines]), ''].join('\n');
}

function fieldText(field: ScannedField, proposal: Proposal | undefined): string[] {
  const { filled, blank, different, looks, shortest, longest, dates, frequencies, shapes } = field;
  const meaning = proposal === undefined ? '' : meaningText(proposal);
  const score = proposal === undefined ? '' : ` (${proposal.score.toFixed(2)})`;
  const isForm = dates.length > 0 ? `, ${dates.join(' or ')}` : '';
  return [
    `${field.of} ${printable(field.name)}`,
    `  ${filled} filled, ${blank} blank, ${different} different: ${looks}${isForm}, ${shortest} to ${longest} letters`,
    ...(filled > 0 ? [`  how often: ${frequencies.join(', ')}`] : []),
    ...(filled > 0 ? [`  shapes: ${shapes.map(countedText).join(', ')}`] : []),
    ...(field.values === undefined || field.values.length === 0
      ? []
      : [`  values: ${field.values.map(countedText).join(', ')}`]),
    `  could be: ${meaning === '' ? 'nothing that is known' : meaning + score}`,
    ...(proposal?.reasons ?? []).map((reason) => `    since ${printable(reasonText(reason))}`),
    ...(proposal?.questions ?? []).map((one) => `    asked: ${printable(questionText(one))}`),
    ...(proposal !== undefined && proposal.offers.length > 0
      ? [`    near: ${proposal.offers.join(', ')}`]
      : []),
  ];
}

function countedText({ text, count }: { readonly text: string; readonly count: number }): string {
  return `${JSON.stringify(text)} ${count}`;
}

function sourceText(source: Source): string {
  switch (source.syntax) {
    case 'csv':
      return `csv with ${JSON.stringify(source.delimiter ?? ',')}`;
    case 'xlsx':
      return source.sheet === undefined ? 'xlsx' : `xlsx, sheet ${JSON.stringify(source.sheet)}`;
    default:
      return source.syntax;
  }
}

function share(part: number, whole: number): string {
  return whole === 0 ? '0 %' : `${Math.round((100 * part) / whole)} %`;
}
