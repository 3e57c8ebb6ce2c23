import { describe, expect, it } from 'vitest';
import type { Exam } from '../../src/index.ts';
import { toHtml } from '../../src/report/index.ts';
import { emptyExam } from './empty-exam.ts';
import { parsePage } from './reading/parsed-page.ts';
import { savedExample } from './saved-examples.ts';

/** Keys of the signs of the first part of the body, in the order of their numbers. */
function signs(html: string): readonly string[] {
  const [part = ''] = html.split('<div class="part">').slice(1);
  return [...part.matchAll(/<li id="sign-\d+"[^>]* data-of="([^"]*)"/g)].map(([, key = '']) => key);
}

describe('what is abnormal', () => {
  it('begins with what the conclusion rests on: lid and pupil before what hangs on them', () => {
    const exam = savedExample('drooping-lid');
    const basis = exam.conclusion?.basedOn ?? [];
    const order = signs(toHtml(exam));
    const inBasis = order.map((key) => basis.includes(key));
    expect(order.length).toBeGreaterThan(3);
    expect(inBasis).toEqual([...inBasis].sort((a, b) => Number(b) - Number(a)));
    expect(inBasis[0]).toBe(true);
  });
});

describe('what a step of the record changed', () => {
  const exam = savedExample('neck-lump');
  const rows = (versionBefore?: Exam): ReturnType<typeof parsePage>['sections'] =>
    parsePage(toHtml(exam, versionBefore && { versionBefore })).sections;

  it('is named in words, and has no column of what stood before where that is not known', () => {
    const section = rows().get('corrected');
    expect(section?.head).toEqual(['What', 'Now']);
    expect(section?.rows.map(([name]) => name)).toEqual([
      'Size of a palpable node',
      'Size of a palpable node',
    ]);
  });

  it('stands beside what stood there before', () => {
    const section = rows({ ...exam, statements: [] }).get('corrected');
    expect(section?.head).toEqual(['What', 'Before', 'Now']);
    expect(section?.rows.map(([, before]) => before)).toEqual(['not stated', 'not stated']);
  });
});

describe('what the protocol asks for and nothing was said about', () => {
  it('names the tests of the same sides and ways together, each once', () => {
    const html = toHtml(emptyExam('numbness'));
    const [, text = ''] = html.split('id="gaps"');
    const [gaps = ''] = text.split('</section>');
    expect(gaps.match(/Pinprick/g)).toHaveLength(1);
    expect(gaps).toContain(' – right and left: Light touch; Pinprick');
    for (const name of ['Forehead above the brow (V1)', 'Smiling', 'Closing the eyes tightly']) {
      expect(gaps.split(name)).toHaveLength(2);
    }
  });
});

describe('an appendix', () => {
  it('is made by choice alone, and holds what stands behind the first pages without it', () => {
    const exam = savedExample('yearly-check');
    const [plain, chosen] = [toHtml(exam), toHtml(exam, { appendix: true })];
    const heading = '<h2 class="whole">Appendix: everything else that was stated</h2>';
    expect(plain).not.toContain(heading);
    expect(chosen.replace(heading, '').replace('details appendix', 'details')).toBe(plain);
    expect(chosen.indexOf('id="abnormal"')).toBeLessThan(chosen.indexOf(heading));
    expect(chosen.indexOf(heading)).toBeLessThan(chosen.indexOf('id="negatives"'));
  });
});
