import { describe, expect, it } from 'vitest';
import type { Exam, Measurement, Statement } from '../../src/index.ts';
import { toHtml } from '../../src/report/index.ts';
import { parsePage } from './reading/parsed-page.ts';

const size = (value: string, key = 'size'): Measurement => ({
  key,
  kind: 'measurement',
  measure: 'lesion-max',
  region: 'temple',
  side: 'right',
  value,
  unit: 'mm',
});

function visit(year: number, ...statements: Measurement[]): Exam {
  return {
    format: 'face-neck-exam/1',
    id: `quay-${year}`,
    status: 'final',
    subject: { reference: 'Patient/1' },
    examiners: [{ key: 'nurse' }],
    performed: { start: `${year}-05-05T09:00:00+02:00` },
    recorded: `${year}-05-05T09:40:00+02:00`,
    protocol: { id: 'skin-lesion', version: '1.0.0' },
    statements,
  };
}

function courseOf(exam: Exam, prior: Exam, earlier: readonly Exam[]): unknown {
  return parsePage(toHtml(exam, { checks: { prior }, earlier })).sections.get('course')?.rows;
}

describe('the course of figures', () => {
  const [now, before, first] = [
    visit(2025, size('6.0')),
    visit(2024, size('4.0')),
    visit(2023, size('4.5')),
  ];

  it('stands oldest first, whatever the order in which exams are given', () => {
    const row = [
      'Greatest diameter of a lesion, Temple, right',
      '5 May 2023: 4.5 mm 5 May 2024: 4.0 mm 5 May 2025: 6.0 mm',
      '',
    ];
    expect(courseOf(now, before, [first])).toEqual([row]);
    expect(courseOf(now, first, [before])).toEqual([row]);
  });

  it('leaves out another person, a withdrawn exam, and a figure that stands twice', () => {
    expect(
      courseOf(now, before, [{ ...first, subject: { reference: 'Patient/2' } }]),
    ).toBeUndefined();
    expect(courseOf(now, before, [{ ...first, status: 'entered-in-error' }])).toBeUndefined();
    expect(
      courseOf(visit(2025, size('6.0'), size('3.0', 'other')), before, [first]),
    ).toBeUndefined();
  });

  it('has no chart of what is alike in each exam, which is told below', () => {
    const still = (year: number): Exam => visit(year, size('4.5'), size('3.0', 'other-0'));
    const one = (year: number): Exam => visit(year, size('4.5'));
    expect(courseOf(still(2025), still(2024), [still(2023)])).toBeUndefined();
    const html = toHtml(one(2025), { checks: { prior: one(2024) }, earlier: [one(2023)] });
    expect(html).toContain(
      '<p>The same at each examination: Greatest diameter of a lesion, Temple, right: 4.5 mm</p>',
    );
  });

  it('is told only from three exams on', () => {
    expect(courseOf(now, before, [])).toBeUndefined();
  });
});

describe('change since the last examination', () => {
  const ruler = { key: 'ruler', type: 'ruler', resolution: { value: '0.5', unit: 'mm' } } as const;
  const measured = (year: number, value: string): Exam => ({
    ...visit(year, { ...size(value), instruments: ['ruler'], methods: ['measurement'] }),
    instruments: [ruler],
  });
  const changed = (now: Exam, prior: Exam): readonly (readonly string[])[] | undefined =>
    parsePage(toHtml(now, { checks: { prior } })).sections.get('change')?.rows;

  it('is a row with the difference and what the instrument can tell', () => {
    expect(changed(measured(2025, '6.0'), measured(2024, '4.0'))).toEqual([
      [
        'Greatest diameter of a lesion, Temple, right',
        'Changed',
        '4.0 mm → 6.0 mm, +2.0 mm = 50 %, 365 days, the instrument reads to 0.5 mm',
        '',
      ],
    ]);
  });

  it('of less than the instrument can tell is a row that says so', () => {
    const [[, change, detail = ''] = []] =
      changed(measured(2025, '4.3'), measured(2024, '4.0')) ?? [];
    expect(change).toBe('Unchanged by measurement');
    expect(detail).toContain('no more than the instrument can tell apart');
  });

  it('that there is none of stands in a line, and hides no row', () => {
    const html = toHtml(measured(2025, '4.0'), { checks: { prior: measured(2024, '4.0') } });
    expect(html).toContain(
      '<li>Unchanged by measurement: Greatest diameter of a lesion, Temple, right: 4.0 mm</li>',
    );
    expect(parsePage(html).sections.get('change')?.rows).toEqual([]);
  });

  it('tells in a row a sign of which the exam before says nothing, and in lines what else cannot be compared', () => {
    const tag: Statement = {
      key: 'tag',
      kind: 'finding',
      finding: 'skin-tag',
      presence: 'present',
      region: 'temple',
      side: 'left',
    };
    const itch: Statement = {
      key: 'itch',
      kind: 'symptom',
      symptom: 'sym-skin.itch',
      answer: 'unsure',
    };
    const html = toHtml(
      { ...visit(2025), statements: [tag, itch] },
      { checks: { prior: { ...visit(2024), statements: [{ ...itch, answer: 'yes' }] } } },
    );
    const rows = parsePage(html).sections.get('change')?.rows ?? [];
    expect(rows.map(([name]) => name)).toEqual(['Skin tag – Temple, left']);
    expect(html).toContain('<li>Not comparable: Itch of the skin (');
  });
});

describe('what does not agree', () => {
  it('is told with the statement it is about', () => {
    const lid = (key: string, measure: string, value: string): Measurement => ({
      ...size(value, key),
      measure,
      region: measure === 'pfh' ? 'eyes' : measure === 'mrd1' ? 'lid-upper' : 'lid-lower',
    });
    const exam = visit(
      2025,
      lid('a', 'mrd1', '4.0'),
      lid('b', 'mrd2', '5.0'),
      lid('c', 'pfh', '15.0'),
    );
    const html = toHtml({ ...exam, protocol: { id: 'droopy-lid', version: '1.0.0' } });
    expect(html).toContain('id="disagree"');
  });
});
