import type { Mapping } from '../../convert/mapping/mapping.ts';
import type { Exam } from '../../model/exam.ts';
import { cdaFormat } from './cda.ts';
import { csvFormat } from './csv.ts';
import type { LegacyFormat, LegacyFormatName } from './format.ts';
import { hl7v2Format } from './hl7v2.ts';
import { xmlFormat } from './xml.ts';

export const legacyFormats: { readonly [Name in LegacyFormatName]: LegacyFormat } = {
  csv: csvFormat,
  hl7v2: hl7v2Format,
  xml: xmlFormat,
  cda: cdaFormat,
};

/**
 * Writes exams as an older system would export them: a long CSV table, ORU^R01 messages, an XML
 * export, or CDA documents one after the other. The mapping from {@link sampleMapping} reads them;
 * what is lost on the way stands in `formatLosses`.
 *
 * @param exams The exams to write.
 * @param format `csv`, `hl7v2`, `xml` or `cda`.
 * @returns The text of the export.
 * @example
 * const messages = writeExams(sampleExams(1, 9), 'hl7v2');
 */
export function writeExams(exams: Iterable<Exam>, format: LegacyFormatName): string {
  const { begin, exam: write, end } = legacyFormats[format];
  return begin + Array.from(exams, write).join('') + end;
}

/**
 * Gives the mapping that reads what {@link writeExams} wrote.
 *
 * @param format `csv`, `hl7v2`, `xml` or `cda`.
 * @returns A whole mapping, to be used as it is.
 * @example
 * const readsMessages = sampleMapping('hl7v2');
 */
export function sampleMapping(format: LegacyFormatName): Mapping {
  return legacyFormats[format].mapping();
}
