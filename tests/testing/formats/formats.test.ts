import { describe, expect, it } from 'vitest';
import type { Exam } from '../../../src/model/exam.ts';
import { optionalParts } from '../../../src/model/optional-parts.ts';
import type { Carried, Statement } from '../../../src/model/statement.ts';
import { sampleMapping, writeExams } from '../../../src/testing/formats/formats.ts';
import { formatLosses } from '../../../src/testing/formats/losses/losses.ts';
import { whatArrives, withNumberedKeys } from '../../../src/testing/formats/losses/what-arrives.ts';
import { createRandom } from '../../../src/testing/random.ts';
import { withOnly } from '../../../src/testing/without.ts';
import { toldByKind } from '../../report/told-by-kind/told-by-kind.ts';
import { sampled } from '../../sampled.ts';
import { circle, circleExams, readers } from './circle.ts';
import { said } from './said.ts';

const names = ['csv', 'hl7v2', 'xml', 'cda'] as const;
const exams = circleExams(sampled(20, 50));

/** Read again and sent through a bundle; `npm run test:slow` does that with 500. */
const circled = circleExams(sampled(10, 25));

const seen: Carried = { exam: 'E1', statement: 's1', at: '2020-02-03', confirmed: true };
const notLookedAt: Carried = { ...seen, confirmed: false };

describe.each(names)('sample exams as %s', (format) => {
  it('come back equal up to the losses of the format, and through a bundle', () => {
    expect(circle(circled, format).size).toBeGreaterThan(10);
  });

  it('lose no statement but what no item can say, and of no other what it says', () => {
    for (const exam of exams) {
      const arrived = whatArrives(exam, format).exam.statements;
      const stated = exam.statements.filter(
        (one) => one.kind !== 'image' && !('except' in one) && one.carried?.confirmed !== false,
      );
      expect(arrived.map(said)).toEqual(stated.map(said));
    }
  });
});

describe.each(names)('what was taken over and not looked at again, as %s', (format) => {
  const random = createRandom(5);

  it('is left out as if it were not in the exam, and is told', () => {
    for (const exam of exams) {
      const statements = exam.statements.map(
        (one): Statement => ({ ...one, carried: random.chance(0.7) ? seen : notLookedAt }),
      );
      const left = statements.filter(({ carried }) => carried === seen);
      const all = { ...exam, statements };
      const without = withOnly(all, left, new Set(optionalParts));
      expect(writeExams([all], format), exam.id).toBe(writeExams([without], format));
      const told = whatArrives(all, format).losses.includes('unconfirmed');
      expect(told, exam.id).toBe(left.length < statements.length);
    }
  });

  it('is never read again as of today, whatever kind it is of', () => {
    const carried = exams.map(({ conditions: _, ...exam }) => ({
      ...exam,
      statements: exam.statements.map((one): Statement => ({ ...one, carried: notLookedAt })),
    }));
    const kinds = new Set(carried.flatMap(({ statements }) => statements.map(({ kind }) => kind)));
    expect([...kinds].sort()).toEqual(Object.keys(toldByKind).sort());
    const read = readers[format](writeExams(carried, format), sampleMapping(format));
    expect(read.exams.map(({ exam }) => exam.statements)).toEqual(carried.map(() => []));
  });
});

describe.each(names)('an exam that no sample is like, as %s', (format) => {
  it('loses numbers of unknown systems, and references to what is not there', () => {
    const [lump, size] = plain.statements;
    if (lump?.kind !== 'finding' || size === undefined) throw new Error('another exam than below');
    const { attributes: _, certainty: __, ...rest } = lump;
    const absent = { ...rest, presence: 'absent' } as const;
    const number = { system: 'https://union.example/members', value: '12' };
    const identifiers = [...(plain.subject.identifiers ?? []), number];
    const odd: Exam = { ...plain, subject: { identifiers }, statements: [absent, size] };
    expect([...circle([odd], format)]).toEqual(expect.arrayContaining(['about', 'other-numbers']));
  });
});

describe('the table of losses', () => {
  it('has each loss once, told in words', () => {
    expect(new Set(formatLosses.map(({ id }) => id)).size).toBe(formatLosses.length);
    for (const { what, why } of formatLosses) expect(what.length * why.length).toBeGreaterThan(100);
  });

  it('is all that an exam loses: one that has nothing of it arrives as it is', () => {
    for (const format of names) {
      expect(whatArrives(plain, format).exam).toEqual({
        ...withNumberedKeys(plain),
        id: 'sample.W7',
      });
    }
  });
});

const plain: Exam = {
  format: 'face-neck-exam/1',
  id: 'W7',
  status: 'final',
  subject: { identifiers: [{ system: 'https://clinic.example/workers', value: 'W-7' }] },
  examiners: [{ key: 'examiner', name: { text: 'Harbour clinic' } }],
  performed: { start: '2024-05-06T07:08:09+02:00' },
  recorded: '2024-05-06T08:00:00+02:00',
  protocol: { id: 'full', version: '1.0.0' },
  statements: [
    {
      key: 'lump',
      kind: 'finding',
      region: 'cheek-malar',
      side: 'right',
      methods: ['palpation'],
      finding: 'lump-felt',
      presence: 'present',
      certainty: 'suspected',
      attributes: [{ attribute: 'lump-consistency', value: 'soft' }],
      note: 'a|b',
    },
    {
      key: 'size',
      kind: 'measurement',
      region: 'cheek-malar',
      side: 'right',
      measure: 'lesion-max',
      value: '6.0',
      comparator: '<',
      unit: 'mm',
      about: 'lump',
    },
  ],
  conclusion: { text: 'Small & soft', concern: 'watch' },
};

describe('the text of an exam', () => {
  it('is a row for each item in CSV (RFC 4180)', () => {
    const head =
      'W7,final,W-7,,,,,,,,2024-05-06T07:08:09+02:00,,2024-05-06T08:00:00+02:00,Harbour clinic,,,Small & soft,watch';
    expect(writeExams([plain], 'csv').split('\r\n').slice(1)).toEqual([
      `${head},finding:lump-felt,suspected,cheek-malar,right,palpation,,,,1,a|b`,
      `${head},attribute:lump-felt:lump-consistency,soft,cheek-malar,right,,,,,1,`,
      `${head},measure:lesion-max,<6.0,cheek-malar,right,,,mm,,1,`,
      '',
    ]);
  });

  it('is a message of HL7 v2.5.1, ORU^R01, with escapes of chapter 2 and SN of chapter 2A', () => {
    expect(writeExams([plain], 'hl7v2').split('\r')).toEqual([
      'MSH|^~\\&|CHECKS|HARBOUR|||20240506080000+0200||ORU^R01^ORU_R01|W7|P|2.5.1||||||UNICODE UTF-8',
      'PID|1||W-7^^^WORKERS^PI',
      'OBR|1||W7|29545-1^Physical findings^LN|||20240506070809+0200||||||||||||||||||F|||||||&Harbour clinic',
      'ZEX|final|Small \\T\\ soft|watch',
      'OBX|1|CWE|finding:lump-felt^^L|1|suspected||||||F||||||palpation|||cheek-malar^^^right',
      'NTE|1||a\\F\\b',
      'OBX|2|CWE|attribute:lump-felt:lump-consistency^^L|1|soft||||||F|||||||||cheek-malar^^^right',
      'OBX|3|SN|measure:lesion-max^^L|1|<^6.0|mm|||||F|||||||||cheek-malar^^^right',
      '',
    ]);
  });

  it('is well-formed XML', () => {
    const text = writeExams([plain], 'xml');
    expect(text).toContain('<conclusion concern="watch">Small &amp; soft</conclusion>');
    expect(text).toContain(
      '<item code="measure:lesion-max" region="cheek-malar" side="right" unit="mm" lesion="1"><value>&lt;6.0</value></item>',
    );
  });

  it('is a document of CDA R2 with entries in a physical exam section', () => {
    const text = writeExams([plain], 'cda');
    expect(text).toContain('<typeId root="2.16.840.1.113883.1.3" extension="POCD_HD000040"/>');
    expect(text).toContain('<value xsi:type="CD" code="suspected"/><methodCode code="palpation"/>');
    expect(text).toContain('<value xsi:type="ST">&lt;6.0 mm</value>');
  });
});
