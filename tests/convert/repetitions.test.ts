import { describe, expect, it } from 'vitest';
import { fromHl7v2 } from '../../src/convert/hl7v2/from-hl7v2.ts';
import type { Mapping } from '../../src/convert/mapping/mapping.ts';
import clinic from './hl7v2/clinic.json' with { type: 'json' };
import { checkLedger } from './syntax-cases.ts';

// The file is checked against the schema of mappings when it is used.
const mapping = clinic as unknown as Mapping;
const named: Mapping = {
  ...mapping,
  exam: { ...mapping.exam, examiner: { name: 'OBR-16.2', fixed: { name: 'Harbour clinic' } } },
};

/** A message with further fields of PID, PV1 and OBR. Repetition: HL7 v2.5.1 chapters 3 and 4. */
function message(pid: { [field: number]: string }, pv1 = '', obr16 = ''): string {
  const fields: string[] = Array.from({ length: 30 }, () => '');
  Object.entries({ 3: 'H-0042^^^HARBOUR^MR', 5: 'ROPE^ADA', ...pid }).forEach(([at, text]) => {
    fields[Number(at) - 1] = text;
  });
  return [
    'MSH|^~\\&|EXAM|HARBOUR|EHR|HUB|20240301101500+0000||ORU^R01^ORU_R01|T1|P|2.5.1',
    `PID|${fields.join('|')}`,
    ...(pv1 === '' ? [] : [pv1]),
    `OBR|1||E-1|FNEX|||202403010945|||||||||${obr16}|||||||||F`,
    'OBX|1|NM|MRD1|L|2.5|mm|||||F',
  ].join('\r');
}

describe('ordinary repetitions', () => {
  it.each<[string, string]>([
    ['two phones', message({ 13: '^PRN^PH^^^555^0101~^ORN^CP^^^555^0102' })],
    ['two races', message({ 10: '2106-3^White^CDCREC~2054-5^Black^CDCREC' })],
    ['an alternate code in a field', message({ 10: 'a^b~c^d' })],
    ['two addresses', message({ 11: '1 Quay^^Port~2 Mole^^Port' })],
    ['an alias beside the legal name', message({ 5: 'ROPE^ADA^^^^^L~KNOT^ADDIE^^^^^A' })],
    ['two names without a type', message({ 5: 'ROPE^ADA~KNOT^ADDIE' })],
    ['two attending doctors', message({}, 'PV1|1|O|||||7^TIDE^MARA~8^SAND^OLE')],
    ['two ordering providers', message({}, '', '7^TIDE^MARA~8^SAND^OLE')],
  ])('%s: one exam, and nothing of it in a note', (_, text) => {
    const result = fromHl7v2(text, named);
    expect(result.quarantine.flatMap(({ issues }) => issues)).toEqual([]);
    const [one] = result.exams;
    expect(one?.exam.statements.map(({ kind }) => kind)).toEqual(['measurement']);
    checkLedger(result);
  });

  it('takes the legal name, with its own given name', () => {
    const { exams } = fromHl7v2(message({ 5: 'KNOT^ADDIE^^^^^A~ROPE^ADA^^^^^L' }), named);
    expect(exams[0]?.exam.subject.name).toEqual({ family: 'ROPE', given: ['ADA'] });
  });

  it('takes no name where it cannot tell', () => {
    const { exams } = fromHl7v2(message({ 5: 'KNOT^ADDIE~ROPE^ADA' }), named);
    expect(exams[0]?.exam.subject.name).toBeUndefined();
    expect(exams[0]?.issues.map(({ code, severity }) => `${severity} ${code}`)).toContain(
      'warning conflicting-fields',
    );
  });

  it('has an examiner for each provider', () => {
    const { exams } = fromHl7v2(message({}, '', '7^TIDE^MARA~8^SAND^OLE'), named);
    expect(exams[0]?.exam.examiners.map(({ name }) => name?.text)).toEqual(['TIDE', 'SAND']);
  });

  it('keeps what a clinician wrote of the order', () => {
    const text = message({}).replace('|202403010945||||||', '|202403010945||||||lid droops');
    const { exams } = fromHl7v2(text, named);
    expect(JSON.stringify(exams[0]?.exam.statements)).toContain('lid droops');
  });
});
