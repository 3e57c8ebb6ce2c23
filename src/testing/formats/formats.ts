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
 * Exams as an older system would export them: a long CSV table, ORU^R01 messages, an XML export or
 * CDA documents one behind the other. The mapping of `sampleMapping` reads them; what is lost on the
 * way stands in `formatLosses`.
 */
export function writeExams(exams: Iterable<Exam>, format: LegacyFormatName): string {
  const { begin, exam: write, end } = legacyFormats[format];
  return begin + Array.from(exams, write).join('') + end;
}

/** The mapping that reads what `writeExams` wrote in this format. */
export function sampleMapping(format: LegacyFormatName): Mapping {
  return legacyFormats[format].mapping();
}
