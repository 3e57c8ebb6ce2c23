import { describe, expect, it } from 'vitest';
import { fromCda } from '../../src/convert/cda/from-cda.ts';
import { fromHl7v2 } from '../../src/convert/hl7v2/from-hl7v2.ts';
import type { Mapping, PresetMapping } from '../../src/convert/mapping/mapping.ts';
import { fromXmlExport } from '../../src/convert/xml/from-xml-export.ts';

const exam: Mapping['exam'] = {
  id: { prefix: 'quay', from: ['@id'] },
  status: { value: 'final' },
  subject: { name: '@name' },
  performed: { start: '@date' },
  recorded: { value: '2024-03-01T10:00:00Z' },
  examiner: { fixed: { name: 'Nell Berth' } },
  protocol: { id: 'full', version: '1.0.0' },
};

const eyes: Mapping = {
  format: 'face-neck-mapping/1',
  source: { syntax: 'xml', exam: 'export/exam' },
  exam,
  fields: {
    'eye/mrd': {
      kind: 'measurement',
      measure: 'mrd1',
      sideFrom: 'eye/@side',
      unitFrom: 'eye/mrd/@unit',
    },
    'eye/ptosis': {
      kind: 'finding',
      finding: 'lid-position.ptosis',
      region: 'lid-upper',
      sideFrom: 'eye/@side',
      words: { yes: 'present', no: 'absent', '': 'not-stated' },
    },
  },
  noValue: { '': 'not-stated' },
  sides: { R: 'right', L: 'left' },
  units: { mm: 'mm', cm: 'cm' },
};

const statements = (inside: string): readonly object[] => {
  const text = `<export><exam id="1" name="Ada Rope" date="2024-03-01">${inside}</exam></export>`;
  return fromXmlExport(text, eyes).exams.flatMap((one) => one.exam.statements);
};

const codedOf = (all: readonly object[]): object[] =>
  all.filter((one) => 'kind' in one && one.kind !== 'note');

describe('a value and what stands with it', () => {
  it('keeps the side of its own element where the other of the name is empty', () => {
    const right = '<eye side="R"><mrd unit="mm"/><ptosis/></eye>';
    const left = '<eye side="L"><mrd unit="mm">2.5</mrd><ptosis>yes</ptosis></eye>';
    for (const inside of [right + left, left + right]) {
      expect(codedOf(statements(inside))).toMatchObject([
        { kind: 'measurement', side: 'left', value: '2.5', unit: 'mm' },
        { kind: 'finding', side: 'left', presence: 'present' },
      ]);
    }
  });

  it('keeps the unit of its own element where the other of the name is empty', () => {
    const inside =
      '<eye side="R"><mrd unit="mm"/></eye><eye side="R"><mrd unit="cm">0.4</mrd></eye>';
    const all = statements(inside);
    expect(JSON.stringify(codedOf(all))).not.toContain('"0.4","unit":"mm"');
    // A measure in another unit than its own is kept as text or stated with the unit that it has.
    expect(JSON.stringify(all)).toMatch(/cm/);
  });
});

const cda: PresetMapping = { format: 'face-neck-mapping/1', use: 'c-cda' };

const site = (code: string): string =>
  `<targetSiteCode code="38934000" codeSystem="2.16.840.1.113883.6.96"><qualifier>
    <name code="272741003" codeSystem="2.16.840.1.113883.6.96"/>
    <value code="${code}" codeSystem="2.16.840.1.113883.6.96"/></qualifier></targetSiteCode>`;

const document = (ids: string, names: string, sites: string): string =>
  `<ClinicalDocument xmlns="urn:hl7-org:v3" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
  <id root="1.2.3" extension="7"/><effectiveTime value="20240301100000+0000"/>
  <recordTarget><patientRole>${ids}<patient><name use="L">${names}</name></patient></patientRole></recordTarget>
  <component><structuredBody><component><section>
    <code code="29545-1" codeSystem="2.16.840.1.113883.6.1"/><text>Lids.</text>
    <entry><observation classCode="OBS" moodCode="EVN">
      <code code="ASSERTION" codeSystem="2.16.840.1.113883.5.4"/><statusCode code="completed"/>
      <value xsi:type="CD" code="11934000" codeSystem="2.16.840.1.113883.6.96"/>${sites}
    </observation></entry>
  </section></component></structuredBody></component></ClinicalDocument>`;

const clinic = '<id root="1.2.3.5" extension="H-0042"/>';
const given = '<given>Ada</given><family>Rope</family>';

describe('a person', () => {
  it('has no number of another name space where the one that is asked for has no value', () => {
    const asked: PresetMapping = {
      ...cda,
      exam: {
        subject: {
          identifiers: [
            {
              from: 'ClinicalDocument/recordTarget/patientRole/id/@extension',
              system: 'https://quay.example/numbers',
              where: { field: 'ClinicalDocument/recordTarget/patientRole/id/@root', is: '1.2.3.5' },
            },
          ],
        },
      },
    };
    const ids = '<id root="1.2.3.5" nullFlavor="UNK"/><id root="1.2.3.6" extension="S-2"/>';
    const { exams } = fromCda(document(ids, given, site('24028007')), asked);
    for (const one of exams) expect(one.exam.subject.identifiers).toBeUndefined();
    const both = fromCda(document(clinic + ids, given, site('24028007')), asked);
    expect(JSON.stringify(both.exams.map((one) => one.exam.subject))).not.toContain('S-2');
  });

  it('with a second given name has both, and with a second family name is still one exam', () => {
    const convert = (names: string) => {
      const { exams, quarantine } = fromCda(document(clinic, names, site('24028007')), cda);
      expect(quarantine.flatMap(({ issues }) => issues)).toEqual([]);
      return exams;
    };
    const [one] = convert('<given>Ada</given><given>May</given><family>Rope</family>');
    expect(one?.exam.subject.name).toEqual({ family: 'Rope', given: ['Ada', 'May'] });
    const [two] = convert('<given>Ada</given><family>Rope</family><family>Knot</family>');
    expect(two?.exam.subject.name).toBeUndefined();
    expect(two?.issues.map(({ code }) => code)).toContain('conflicting-fields');
  });
});

describe('two sides beside one value', () => {
  it('are both told of a C-CDA entry with two sites', () => {
    const sites = site('24028007') + site('7771000');
    const [one] = fromCda(document(clinic, given, sites), cda).exams;
    const coded = codedOf(one?.exam.statements ?? []);
    expect(coded).toMatchObject([
      { finding: 'lid-position.ptosis', side: 'right', presence: 'present' },
      { finding: 'lid-position.ptosis', side: 'left', presence: 'present' },
    ]);
  });

  it('are both told of an OBX-20 that repeats', () => {
    const message = [
      'MSH|^~\\&|A|B|C|D|20240301101500+0000||ORU^R01|M-1|P|2.5.1',
      'PID|1||H-1^^^QUAY&1.2.3&ISO||Rope^Ada',
      'OBR|1||F-1|EXAM|||20240301|||||||||||||||||F',
      'OBX|1|CWE|404684003^^SCT||11934000^^SCT||||||F|||||||||38934000^^SCT~R^Right^HL70495~L^Left^HL70495',
    ].join('\r');
    const oru: PresetMapping = { format: 'face-neck-mapping/1', use: 'hl7v2-oru' };
    const [one] = fromHl7v2(message, oru).exams;
    expect(codedOf(one?.exam.statements ?? [])).toMatchObject([
      { finding: 'lid-position.ptosis', side: 'right' },
      { finding: 'lid-position.ptosis', side: 'left' },
    ]);
  });
});
