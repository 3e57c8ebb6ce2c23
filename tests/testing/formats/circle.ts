import { expect } from 'vitest';
import { fromCda } from '../../../src/convert/cda/from-cda.ts';
import { fromCsv } from '../../../src/convert/csv/from-csv.ts';
import { fromHl7v2 } from '../../../src/convert/hl7v2/from-hl7v2.ts';
import { fromXmlExport } from '../../../src/convert/xml/from-xml-export.ts';
import { toBundleOrThrow } from '../../../src/export/to-bundle.ts';
import type { Exam } from '../../../src/model/exam.ts';
import { parseExam } from '../../../src/model/parse-exam.ts';
import { fromBundle } from '../../../src/read/from-bundle.ts';
import type { LegacyFormatName } from '../../../src/testing/formats/format.ts';
import { sampleMapping, writeExams } from '../../../src/testing/formats/formats.ts';
import { whatArrives, withNumberedKeys } from '../../../src/testing/formats/losses/what-arrives.ts';
import { sampleExams } from '../../../src/testing/sample-exam.ts';

export const readers = { csv: fromCsv, hl7v2: fromHl7v2, xml: fromXmlExport, cda: fromCda };

/** Seeded exams of all sizes: most are small or odd, some usual, and a full one where there are many. */
export function circleExams(count: number): Exam[] {
  const usual = Math.floor(count / 25);
  const edge = Math.floor(count * 0.4);
  const full = Math.floor(count / 250);
  const small = count - usual - edge - full;
  return [
    ...sampleExams(1, small, { size: 'small' }),
    ...sampleExams(1, edge, { size: 'edge' }),
    ...sampleExams(1, usual, { size: 'usual' }),
    ...sampleExams(1, full, { size: 'full' }),
  ];
}

/** Ids of losses that were met on the way. */
export function circle(exams: readonly Exam[], format: LegacyFormatName): ReadonlySet<string> {
  const result = readers[format](writeExams(exams, format), sampleMapping(format));
  expect(result.issues).toEqual([]);
  expect(result.quarantine).toEqual([]);
  expect(result.exams).toHaveLength(exams.length);
  const met = new Set<string>();
  result.exams.forEach(({ exam, issues }, at) => {
    const original = exams[at];
    if (original === undefined) throw new Error('more exams than there were');
    const { exam: expected, losses } = whatArrives(original, format);
    for (const loss of losses) met.add(loss);
    expect(withNumberedKeys(exam), `${original.id} as ${format}`).toEqual(expected);
    // The reader says nothing about the exam that checking the exam itself does not say.
    expect(issues.map(({ code }) => code)).toEqual(parseExam(exam).issues.map(({ code }) => code));
    const { value } = fromBundle(toBundleOrThrow(exam));
    expect(value, `${original.id} as ${format} as bundle`).toEqual(exam);
  });
  return met;
}
