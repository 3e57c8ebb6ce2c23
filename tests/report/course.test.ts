import { describe, expect, it } from 'vitest';
import type { Exam, Measurement } from '../../src/index.ts';
import { toHtml } from '../../src/report/index.ts';
import { parsePage } from './parsed-page.ts';

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
      'Greatest diameter of a lesion, Temple, right, mm',
      '| 5 May 2023: 4.5 | 5 May 2024: 4.0 | 5 May 2025: 6.0',
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

  it('is told only from three exams on', () => {
    expect(courseOf(now, before, [])).toBeUndefined();
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
