import { describe, expect, it } from 'vitest';
import type { Statement } from '../../../src/index.ts';
import { toHtml } from '../../../src/report/index.ts';
import { emptyExam } from '../empty-exam.ts';
import { type Drawing, marksOn, parseDrawing } from './parsed-drawing.ts';

function said(
  state: 'normal' | 'partial' | 'not-examined' | 'abnormal',
  region: string,
  side?: 'right' | 'left',
): Statement {
  return {
    key: `${state}-${region}-${side}`,
    kind: 'region-state',
    state,
    region,
    ...(side && { side }),
    ...(state === 'not-examined' ? { reason: { code: 'time' } } : { methods: ['inspection'] }),
    ...(state === 'partial' && { limit: { code: 'unable-hair' } }),
  } as Statement; // one of the four states at a time
}

const absent: Statement = {
  key: 'absent',
  kind: 'finding',
  finding: 'naevus',
  presence: 'absent',
  region: 'cheek-malar',
  side: 'left',
};
const statements = [
  said('normal', 'forehead', 'right'),
  said('partial', 'forehead', 'left'),
  said('not-examined', 'temple', 'right'),
  said('abnormal', 'temple', 'left'),
  absent,
  said('normal', 'ln-iia', 'right'),
  said('not-examined', 'ln-iia', 'left'),
  said('abnormal', 'ln-iii', 'right'),
];
const exam = { ...emptyExam('full'), statements };

function drawing(): Drawing {
  return parseDrawing(toHtml(exam));
}

/** Every mark of a page by its words. */
function marks({ views }: Drawing) {
  return [...views.values()].flatMap(marksOn);
}

describe('a mark on the drawing', () => {
  it('bears the glyph that the legend gives it; each mark of the legend looks different', () => {
    const page = drawing();
    const glyphs = [...page.glyphs];
    expect(new Set(glyphs.map(([, glyph]) => glyph)).size).toBe(glyphs.length);
    expect(page.glyphs.get('silent')).toBe('');
    for (const { title, mark, glyph = '' } of marks(page)) {
      if (title.startsWith('Node level')) continue;
      expect([title, glyph]).toEqual([title, mark === 'sign' ? '' : page.glyphs.get(mark)]);
    }
  });

  it('stands in the middle of its place', () => {
    for (const { shapes } of drawing().views.values()) {
      for (const { inside } of shapes) {
        const [ellipse] = inside.filter(({ of }) => of['class']?.startsWith('mark '));
        const [glyph] = inside.filter(({ of }) => of['class'] === 'symbol');
        if (ellipse === undefined || glyph === undefined) continue;
        expect(glyph.of['x']).toBe(ellipse.of['cx']);
        // Letters stand on their line: the middle of one of 8 units is 3 above it.
        expect(Number(glyph.of['y'])).toBe(Number(ellipse.of['cy']) + 3);
      }
    }
  });

  it('tells normal, limited, not examined, present, absent and silence apart, on the side meant', () => {
    const found = marks(drawing()).map(({ title, mark }) => `${title} = ${mark}`);
    const expected = {
      'Forehead, right': ['normal', 'Examined, no abnormality found'],
      'Forehead, left': ['partial', 'Examined in part'],
      'Temple, right': ['not-examined', 'Not examined, with a reason'],
      'Temple, left': ['sign', 'A sign is present'],
      'Malar (infraorbital) cheek, left': [
        'said',
        'Something was said, the region as a whole was not judged',
      ],
      'Malar (infraorbital) cheek, right': ['silent', 'Nothing was said: not normal by silence'],
    };
    for (const [place, [mark, words]] of Object.entries(expected)) {
      expect(found.filter((one) => one.startsWith(`${place}: `))).not.toEqual([]);
      for (const one of found.filter((text) => text.startsWith(`${place}: `))) {
        expect(one).toBe(`${place}: ${words} = ${mark}`);
      }
    }
  });

  // Levels and their Roman numerals: Robbins KT et al., Arch Otolaryngol Head Neck Surg 2008;134:536-8.
  it('names a level of nodes beside its glyph, also where nothing was said', () => {
    const page = drawing();
    const levels = new Map(
      marks(page)
        .filter(({ title }) => title.startsWith('Node level'))
        .map(({ title, glyph, mark }) => [title.split(':')[0], [mark, glyph]]),
    );
    expect(levels.size).toBe(17);
    for (const [title, [mark, glyph]] of levels) {
      const name = /^Node level ([IVAB]+)/.exec(title ?? '')?.[1];
      if (mark === 'sign') expect(glyph).toBeUndefined();
      else expect(glyph).toBe(`${name} ${page.glyphs.get(mark ?? '')}`.trim());
    }
    expect(levels.get('Node level IIA, right')).toEqual(['normal', 'IIA ✓']);
    expect(levels.get('Node level IIA, left')).toEqual(['not-examined', 'IIA ×']);
    expect(levels.get('Node level III, right')).toEqual(['sign', undefined]);
    expect(levels.get('Node level III, left')).toEqual(['silent', 'III']);
  });
});

describe('signs of the earlier exam', () => {
  const prior = { ...exam, id: 'quay-0', statements: [said('abnormal', 'forehead', 'right')] };
  const compared = (): Drawing => parseDrawing(toHtml(exam, { checks: { prior } }));

  it('are outlined where they were and nowhere else, and said in words', () => {
    const before = marks(compared()).filter((mark) => mark.before !== undefined);
    expect(new Set(before.map(({ title }) => title))).toEqual(
      new Set([
        'Forehead, right: Examined, no abnormality found; A sign was here at the earlier examination',
      ]),
    );
    for (const { before: outline, ellipse } of before) {
      expect(outline?.of).toEqual({
        ...ellipse.of,
        class: 'mark before',
        rx: String(Number(ellipse.of['rx']) + 2.5),
        ry: String(Number(ellipse.of['ry']) + 2.5),
      });
    }
  });

  it('are in the legend where two exams are compared, and only there', () => {
    const line = 'A sign was here at the earlier examination';
    expect(compared().legend).toContain(line);
    const page = drawing();
    expect(page.legend).not.toContain(line);
    expect(marks(page).some(({ before }) => before !== undefined)).toBe(false);
  });
});
