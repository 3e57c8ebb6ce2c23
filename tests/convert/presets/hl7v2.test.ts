import { describe, expect, it } from 'vitest';
import { fromHl7v2 } from '../../../src/convert/hl7v2/from-hl7v2.ts';
import type { PresetMapping } from '../../../src/convert/mapping/mapping.ts';
import { checkLedger } from '../syntax-cases.ts';

const oru: PresetMapping = {
  format: 'face-neck-mapping/1',
  use: 'hl7v2-oru',
  dates: { zone: 'America/New_York' },
};
const mdm: PresetMapping = { ...oru, use: 'hl7v2-mdm' };

const MSH = (type: string): string => `MSH|^~\\&|A|B|C|D|20240301101500+0000||${type}|M-1|P|2.5.1`;
const PID =
  'PID|1||H-0042^^^HARBOUR&1.2.3.5&ISO^MR~S-2^^^TOWN&1.2.3.6&ISO^SS||Rope^Ada^May^^^^L~Knot^Ada^^^^^B||19620320|F|||1 Quay^^Quayside||^PRN^PH^^^555^0101~^PRN^CP^^^555^0102';
const OBR =
  'OBR|1|P-7|F-9|EXAM^Face and neck||20240301|20240301093000-0500||||||droopy lid|||7^Berth^Nell||||||20240301100000-0500|||F|||||||7&Berth&Nell';

/** An OBX by the numbers of its fields; 246794004 is the palpebral fissure height of SNOMED CT. */
const obx = (at: number, fields: Readonly<Record<number, string>>): string =>
  ['OBX', at, ...Array.from({ length: 20 }, (_, index) => fields[index + 2] ?? '')].join('|');

describe('the preset for ORU', () => {
  it('takes person, examiner, times, status and reason as the v2-to-FHIR maps have them', () => {
    const text = [
      MSH('ORU^R01'),
      PID,
      OBR,
      obx(1, { 2: 'TX', 3: 'REM^Remark^L', 5: 'Lid droops', 11: 'F' }),
    ];
    const result = fromHl7v2(text.join('\r'), oru);
    expect(result.quarantine.flatMap(({ issues }) => issues)).toEqual([]);
    const [one] = result.exams;
    expect(one?.exam).toMatchObject({
      id: 'oru.F-9',
      status: 'final',
      subject: {
        identifiers: [
          { system: 'urn:oid:1.2.3.5', value: 'H-0042' },
          { system: 'urn:oid:1.2.3.6', value: 'S-2' },
        ],
        name: { family: 'Rope', given: ['Ada', 'May'] },
        birthDate: '1962-03-20',
        gender: 'female',
      },
      examiners: [{ name: { text: 'Nell Berth' } }],
      performed: { start: '2024-03-01T09:30:00-05:00' },
      recorded: '2024-03-01T10:00:00-05:00',
      indication: { text: 'droopy lid' },
      statements: [{ kind: 'note', text: 'Lid droops', note: 'Remark' }],
    });
    expect(JSON.stringify(one?.exam.statements)).not.toMatch(/Quay|555/);
    checkLedger(result);
  });

  it.each([
    ['F', 'final'],
    ['P', 'preliminary'],
    ['C', 'corrected'],
    ['', 'preliminary'],
  ])('OBR-25 "%s" is %s', (code, status) => {
    const order = OBR.replace('|||F|', `|||${code}|`);
    const text = [MSH('ORU^R01'), PID, order, obx(1, { 2: 'TX', 3: 'REM', 5: 'x', 11: 'F' })];
    const { exams } = fromHl7v2(text.join('\r'), oru);
    expect(exams.map(({ exam }) => exam.status)).toEqual([status]);
  });

  it('codes a number and an assertion by their published codes, with place and side', () => {
    const side = 'R^Right^HL70495';
    const text = [
      MSH('ORU^R01'),
      PID,
      OBR,
      obx(1, { 2: 'NM', 3: '246794004^^SCT', 5: '9.5', 6: 'mm', 11: 'F', 20: side }),
      // 404684003 Clinical finding asks, 11934000 Ptosis of eyelid answers.
      obx(2, {
        2: 'CWE',
        3: '404684003^^SCT',
        5: '11934000^^SCT',
        11: 'F',
        20: `38934000^^SCT~${side}`,
      }),
      obx(3, { 2: 'NM', 3: '29463-7^Body weight^LN', 5: '82', 6: 'kg', 11: 'F' }),
    ];
    const result = fromHl7v2(text.join('\r'), oru);
    const [one] = result.exams;
    expect(one?.exam.statements).toMatchObject([
      { kind: 'measurement', measure: 'pfh', value: '9.5', unit: 'mm', side: 'right' },
      { kind: 'finding', region: 'lid-upper', side: 'right', presence: 'present' },
      { kind: 'note' },
    ]);
    checkLedger(result);
  });

  it('makes an exam of each order, and names one without a number by its message', () => {
    const text = [
      MSH('ORU^R01'),
      PID,
      'OBR|1||F-1|EXAM|||20240301|||||||||||||||||F',
      obx(1, { 2: 'TX', 3: 'REM', 5: 'one', 11: 'F' }),
      'OBR|2||F-2|EXAM|||20240301|||||||||||||||||F',
      obx(1, { 2: 'TX', 3: 'REM', 5: 'two', 11: 'F' }),
    ].join('\r');
    expect(fromHl7v2(text, oru).exams.map(({ exam }) => exam.id)).toEqual(['oru.F-1', 'oru.F-2']);
    const bare = text.split('\rOBR|2')[0]?.replace('F-1', '') ?? '';
    expect(fromHl7v2(bare, oru).exams.map(({ exam }) => exam.id)).toEqual(['oru.M-1']);
  });
});

describe('the preset for MDM', () => {
  it('takes document number, status, originator and times of TXA, and the letter as notes', () => {
    const txa =
      'TXA|1|CN|TX|20240301093000-0500|7^Berth^Nell||20240301100000-0500||8^Hawser^Tom|||DOC-5|||||LA';
    const text = [
      MSH('MDM^T02'),
      'EVN|T02|20240301101500+0000',
      PID,
      'PV1|1|O|QUAY^1|||||||||||||||||||||||||||||||||||||||||20240301',
      txa,
      obx(1, { 2: 'TX', 3: '29545-1^Physical findings^LN', 5: 'Right lid droops', 11: 'F' }),
    ];
    const result = fromHl7v2(text.join('\r'), mdm);
    expect(result.quarantine.flatMap(({ issues }) => issues)).toEqual([]);
    expect(result.exams[0]?.exam).toMatchObject({
      id: 'mdm.DOC-5',
      status: 'final',
      examiners: [{ name: { text: 'Tom Hawser' } }],
      performed: { start: '2024-03-01T09:30:00-05:00' },
      recorded: '2024-03-01T10:00:00-05:00',
      statements: [{ kind: 'note', text: 'Right lid droops' }],
    });
    checkLedger(result);
  });
});
