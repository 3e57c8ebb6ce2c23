import { describe, expect, it } from 'vitest';
import { fromCda } from '../../../src/convert/cda/from-cda.ts';
import { fromCsv } from '../../../src/convert/csv/from-csv.ts';
import type { Mapping, PresetMapping } from '../../../src/convert/mapping/mapping.ts';
import { checkLedger } from '../syntax-cases.ts';

/** All that a person writes: the zone of times without one. */
const own: PresetMapping = {
  format: 'face-neck-mapping/1',
  use: 'c-cda',
  dates: { zone: 'America/New_York' },
};

interface Parts {
  readonly ids?: string;
  readonly patient?: string;
  readonly time?: string;
  readonly header?: string;
}

function document({ ids, patient, time = '20240301101500+0000', header = '' }: Parts): string {
  return [
    '<ClinicalDocument xmlns="urn:hl7-org:v3" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">',
    `<id root="1.2.3.4" extension="D-1"/><title>Yearly check</title><effectiveTime value="${time}"/>${header}`,
    `<recordTarget><patientRole>${ids ?? '<id root="1.2.3.5" extension="H-0042"/>'}`,
    '<addr><streetAddressLine>1 Quay</streetAddressLine></addr><telecom value="tel:555-0101"/>',
    `<patient>${patient ?? '<name use="L"><given>Ada</given><given>May</given><family>Rope</family></name>'}`,
    '<guardian><telecom value="tel:555-0102"/></guardian></patient></patientRole></recordTarget>',
    '<component><structuredBody><component><section>',
    '<templateId root="2.16.840.1.113883.10.20.2.10"/>',
    '<code code="29545-1" codeSystem="2.16.840.1.113883.6.1"/><title>Physical Exam</title>',
    '<text>HEENT: all normal to examination.</text>',
    '</section></component></structuredBody></component></ClinicalDocument>',
  ].join('');
}

/** Shapes of the US Realm Header (C-CDA R2.1, 1.1): SHALL and MAY of name, id and effectiveTime. */
describe('the preset for C-CDA', () => {
  it.each<[string, Parts, object]>([
    ['two given names', {}, { name: { family: 'Rope', given: ['Ada', 'May'] } }],
    [
      'several numbers, each under its own OID',
      { ids: '<id root="1.2.3.5" extension="H-1"/><id root="1.2.3.6" extension="S-2"/>' },
      {
        identifiers: [
          { system: 'urn:oid:1.2.3.5', value: 'H-1' },
          { system: 'urn:oid:1.2.3.6', value: 'S-2' },
        ],
      },
    ],
    [
      'a number that is missing is not replaced by another',
      { ids: '<id root="1.2.3.5" nullFlavor="UNK"/><id root="1.2.3.6" extension="S-2"/>' },
      { identifiers: [{ system: 'urn:oid:1.2.3.6', value: 'S-2' }] },
    ],
    [
      'a time of birth',
      { patient: '<birthTime value="19620320101500"/>' },
      { birthDate: '1962-03-20' },
    ],
    ['a date alone', { time: '20240301' }, {}],
    ['a time without its zone', { time: '20240301101500' }, {}],
    ['a time with a fraction', { time: '20240301101500.000-0500' }, {}],
    [
      'a visit with a start',
      {
        header:
          '<componentOf><encompassingEncounter><effectiveTime><low value="20240229"/></effectiveTime></encompassingEncounter></componentOf>',
      },
      {},
    ],
    [
      'the name at birth beside the one of today',
      {
        patient:
          '<name><given>Ada</given><family>Rope</family></name><name><given qualifier="BR">Ada</given><family>Knot</family></name>',
      },
      { name: { family: 'Rope', given: ['Ada'] } },
    ],
    [
      'a name space that is a UUID',
      { ids: '<id root="CA7B5F0E-4F2B-4C43-9A53-6D3B9B1F2A10" extension="H-1"/>' },
      {
        identifiers: [{ system: 'urn:uuid:ca7b5f0e-4f2b-4c43-9a53-6d3b9b1f2a10', value: 'H-1' }],
      },
    ],
    [
      'a date alone, and a visit later on that day',
      {
        time: '20240301',
        header:
          '<componentOf><encompassingEncounter><effectiveTime><low value="202403011000-0500"/></effectiveTime></encompassingEncounter></componentOf>',
      },
      {},
    ],
    [
      'a visit that began after the document was written',
      {
        header:
          '<componentOf><encompassingEncounter><effectiveTime><low value="20250301"/></effectiveTime></encompassingEncounter></componentOf>',
      },
      {},
    ],
    [
      'a visit whose time can not be read',
      {
        header:
          '<componentOf><encompassingEncounter><effectiveTime><low value="unknown"/></effectiveTime></encompassingEncounter></componentOf>',
      },
      {},
    ],
    [
      'an alias',
      {
        patient:
          '<name use="P"><given>Addie</given><family>Knot</family></name><name use="L"><given>Ada</given><family>Rope</family></name>',
      },
      { name: { family: 'Rope', given: ['Ada'] } },
    ],
  ])('%s', (_, parts, subject) => {
    const result = fromCda(document(parts), own);
    expect(result.quarantine.flatMap(({ issues }) => issues)).toEqual([]);
    const [one] = result.exams;
    expect(one?.exam.subject).toMatchObject(subject);
    // The narrative is the exam; nothing of the header is.
    expect(one?.exam.statements.map(({ kind }) => kind)).toEqual(['note']);
    expect(JSON.stringify(one?.exam.statements)).not.toMatch(/555|Quay|1\.2\.3/);
    checkLedger(result);
  });

  it('keeps an entry that no mapping knows as one text, its side beside its code', () => {
    const entry =
      '</text><entry><observation classCode="OBS" moodCode="EVN"><code code="NODE"/><value xsi:type="CD" code="POS"/><targetSiteCode code="NECK"><qualifier><name code="272741003"/><value code="7771000"/></qualifier></targetSiteCode></observation></entry>';
    const { exams } = fromCda(document({}).replace('</text>', entry), own);
    const texts = exams[0]?.exam.statements.map((one) => ('text' in one ? one.text : ''));
    expect(texts?.filter((text) => text.includes('NODE') && text.includes('7771000'))).toHaveLength(
      1,
    );
    expect(texts).toHaveLength(2);
  });

  it('gives way to what the mapping says', () => {
    const mapping: PresetMapping = { ...own, exam: { status: { value: 'preliminary' } } };
    expect(fromCda(document({}), mapping).exams[0]?.exam.status).toBe('preliminary');
  });

  it('tells the cure for a date alone', () => {
    const { dates: _, ...mapping } = own;
    const { quarantine } = fromCda(document({ time: '20240301' }), mapping);
    expect(quarantine[0]?.issues.map(({ expected }) => expected).join()).toContain('dates.zone');
  });
});

describe('an exam id from person and date', () => {
  it.each([
    ['2024-02-05', undefined],
    ['05/02/2024', 'DD/MM/YYYY'],
    ['5 Feb 2024', 'D MMM YYYY'],
  ])('%s', (date, form) => {
    const mapping: Mapping = {
      format: 'face-neck-mapping/1',
      source: { syntax: 'csv' },
      exam: {
        id: { prefix: 'c', from: ['pid', 'date'] },
        status: { value: 'final' },
        subject: { identifiers: [{ from: 'pid', system: 'https://clinic.example/mrn' }] },
        performed: { start: 'date' },
        recorded: { value: '2025-01-01T00:00:00Z' },
        examiner: { fixed: { name: 'Harbour clinic' } },
        protocol: { id: 'full', version: '1.0.0' },
      },
      ...(form !== undefined && { dates: { formats: [form] } }),
      fields: { remark: { kind: 'note' } },
    };
    const { exams } = fromCsv(`pid,date,remark\n1,${date},lid droops`, mapping);
    expect(exams.map(({ exam }) => exam.id)).toEqual(['c.1.2024-02-05']);
  });
});
