import { describe, expect, it } from 'vitest';
import { fromCda } from '../../src/convert/cda/from-cda.ts';
import { fromHl7v2 } from '../../src/convert/hl7v2/from-hl7v2.ts';
import type { ItemRecords, Mapping } from '../../src/convert/mapping/mapping.ts';
import type { Source } from '../../src/convert/mapping/source.ts';
import { fromXmlExport } from '../../src/convert/xml/from-xml-export.ts';

function mappingOf(source: Source, id: string, parts: Pick<Mapping, 'fields' | 'items'>): Mapping {
  return {
    format: 'face-neck-mapping/1',
    source,
    exam: {
      id: { prefix: 'c', from: [id] },
      status: { value: 'final' },
      subject: { reference: { from: id, prefix: 'Patient/' } },
      performed: { start: id },
      recorded: { value: '2024-02-05T10:00:00Z' },
      examiner: { fixed: { name: 'Harbour clinic' } },
      protocol: { id: 'full', version: '1.0.0' },
    },
    dates: { formats: ['YYYYMMDD'] },
    units: { mm: 'mm' },
    ...parts,
  };
}

const mrd1 = { kind: 'measurement', measure: 'mrd1', side: 'right' } as const;

/** Words beside a code: HL7 v2.8 chapter 2A, CWE.2 is the text of CWE.1. */
describe('a code against its own words', () => {
  const items: ItemRecords[] = [
    {
      kind: 'OBX',
      code: ['OBX-3'],
      value: 'OBX-5',
      unit: 'OBX-6',
      map: {
        SEPTUM: {
          kind: 'finding',
          region: 'septum',
          words: { R: 'septum.deviated-right', L: 'septum.deviated-left' },
        },
        MRD1R: mrd1,
      },
    },
  ];
  const mapping = mappingOf({ syntax: 'hl7v2' }, 'MSH-10', { items });
  const convert = (obx: string): ReturnType<typeof fromHl7v2> =>
    fromHl7v2(
      [
        'MSH|^~\\&|A|B|C|D|20240205101500+0000||ORU^R01|20240205|P|2.5',
        'PID|1||7',
        'OBR|1||E1|EXAM|||20240205|||||||||||||||||F',
        obx,
      ].join('\r'),
      mapping,
    );

  it.each([
    'OBX|1|CWE|SEPTUM||R^deviated to the left^L||||||F',
    'OBX|1|CWE|SEPTUM||R^not deviated^L||||||F',
    'OBX|1|NM|MRD1R^MRD1 left^L||4|mm|||||F',
  ])('is refused with both shown: %s', (obx) => {
    const [one] = convert(obx).exams;
    expect(one?.exam.statements.map(({ kind }) => kind)).toEqual(['note']);
    const words = obx.match(/\^([^^]*(?:left|not)[^^]*)\^/)?.[1] ?? '';
    expect(JSON.stringify(one?.exam.statements)).toContain(words);
    expect(one?.issues.map(({ severity }) => severity)).toContain('warning');
  });

  it.each([
    ['OBX|1|CWE|SEPTUM||R^deviated to the right^L||||||F', 'finding'],
    ['OBX|1|NM|MRD1R^MRD1 right^L||4|mm|||||F', 'measurement'],
  ])('is taken where they agree: %s', (obx, kind) => {
    expect(convert(obx).exams[0]?.exam.statements.map((one) => one.kind)).toEqual([kind]);
  });
});

describe('a nullFlavor beside a value', () => {
  const items: ItemRecords[] = [
    {
      kind: 'observation',
      code: ['observation/code/@code'],
      value: 'observation/value',
      unit: 'observation/value/@unit',
      map: { MRD1: mrd1 },
    },
  ];
  const mapping = mappingOf({ syntax: 'cda' }, 'ClinicalDocument/id/@extension', { items });
  const convert = (observation: string, value: string): ReturnType<typeof fromCda> =>
    fromCda(
      [
        '<ClinicalDocument xmlns="urn:hl7-org:v3" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">',
        '<id root="1.2" extension="20240205"/><recordTarget><patientRole/></recordTarget>',
        '<component><structuredBody><component><section><code code="29545-1" codeSystem="2.16.840.1.113883.6.1"/>',
        `<entry><observation classCode="OBS" moodCode="EVN"${observation}><code code="MRD1"/>`,
        `<statusCode code="completed"/><value xsi:type="PQ" value="4" unit="mm"${value}/></observation></entry>`,
        '</section></component></structuredBody></component></ClinicalDocument>',
      ].join(''),
      mapping,
    );

  it.each([
    [' nullFlavor="NI"', ''],
    ['', ' nullFlavor="NI"'],
  ])('is coded neither way: observation%s, value%s', (observation, value) => {
    const [one] = convert(observation, value).exams;
    expect(one?.exam.statements.map(({ kind }) => kind)).not.toContain('measurement');
    expect(JSON.stringify(one?.exam.statements)).toMatch(/observation\/value(?:\/@value)?: 4/);
    expect(one?.issues.length).toBeGreaterThan(0);
  });

  it('is coded where nothing speaks against it', () => {
    const [one] = convert('', '').exams;
    expect(one?.exam.statements.map(({ kind }) => kind)).toContain('measurement');
  });
});

it.each(['<br/>', '<p/>', '</p><p>'])('%s parts words in XML', (mark) => {
  const mapping = mappingOf({ syntax: 'xml', exam: 'export/exam' }, '@no', {
    fields: { note: { kind: 'note' } },
  });
  const body = mark === '</p><p>' ? '<p>evening</p><p>see</p>' : `evening${mark}see`;
  const text = `<export><exam no="20240205"><note>${body} more</note></exam></export>`;
  const [one] = fromXmlExport(text, mapping).exams;
  expect(JSON.stringify(one?.exam.statements)).not.toContain('eveningsee');
});
