import { describe, expect, it } from 'vitest';
import type { Side, Statement } from '../../../src/index.ts';
import { isDrawn, views } from '../../../src/report/drawing/views.ts';
import { toHtml } from '../../../src/report/index.ts';
import { builtInCatalogue } from '../../../src/terminology/catalogue.ts';
import { emptyExam } from '../empty-exam.ts';
import { savedExamples } from '../saved-examples.ts';

const empty = emptyExam('full');

const sidesOf: Readonly<Record<string, readonly (Side | undefined)[]>> = {
  paired: ['right', 'left', 'both'],
  crossing: ['right', 'left', 'both', 'midline'],
  midline: [undefined],
  whole: [undefined],
};

/** A region found abnormal in each way in which it can have a side: all that the drawing must show. */
const places = [...builtInCatalogue.regions.values()].flatMap(({ code, laterality }) =>
  (sidesOf[laterality] ?? []).map((side) => ({ code, side })),
);

function abnormal({ code, side }: (typeof places)[number], at: number): Statement {
  return {
    key: `s${at}`,
    kind: 'region-state',
    state: 'abnormal',
    region: code,
    ...(side && { side }),
    methods: ['inspection'],
  };
}

/** Numbers of the text that no mark of the drawing answers, and marks that no line answers. */
function unanswered(html: string): readonly string[] {
  const ids = new Set([...html.matchAll(/ id="((?:sign|mark)-\d+)"/g)].map(([, id]) => id));
  return [...html.matchAll(/ href="#((?:sign|mark)-\d+)"/g)].flatMap(([, id]) =>
    id === undefined || ids.has(id) ? [] : [id],
  );
}

describe('the drawing', () => {
  it('shows every region of the table, on every side it can have, by a number that leads to the text and back', () => {
    expect(builtInCatalogue.regions.size).toBeGreaterThanOrEqual(93);
    const html = toHtml({ ...empty, statements: places.map(abnormal) });
    expect(html.match(/ id="sign-\d+"/g)).toHaveLength(places.length);
    expect(html.match(/ id="mark-\d+"/g)).toHaveLength(places.length);
    expect(unanswered(html)).toEqual([]);
  });

  it('draws regions of the table alone, each inside its field', () => {
    for (const { id, areas, width, height } of views) {
      for (const { region, x, y, rx, ry } of areas) {
        expect(builtInCatalogue.regions.has(region), `${id} ${region}`).toBe(true);
        expect([x - rx > -1, x + rx < width + 1, y - ry > -1, y + ry < height + 1], region).toEqual(
          [true, true, true, true],
        );
      }
    }
  });

  it('tells beside the views only groups and functions', () => {
    const beside = [...builtInCatalogue.regions.values()].filter(
      ({ code }) => !(['right', 'left', 'middle'] as const).some((side) => isDrawn(code, side)),
    );
    expect(beside.map(({ code }) => code).sort()).toMatchInlineSnapshot(`
      [
        "ears",
        "eyes",
        "face-neck",
        "general",
        "hearing",
        "jaw",
        "jaw-motion",
        "neck",
        "neck-motion",
        "nose",
        "salivary",
        "skin",
        "swallow",
        "thyroid",
      ]
    `);
  });

  it.each(savedExamples)('%s: shows all that is abnormal', (_, exam) => {
    const html = toHtml(exam);
    const signs = html.match(/ id="sign-\d+"/g) ?? [];
    expect(signs.length).toBeGreaterThan(0);
    expect(html.match(/ id="mark-\d+"/g)).toHaveLength(signs.length);
    expect(unanswered(html)).toEqual([]);
  });

  it('has a place for what a clinic adds and no view shows', () => {
    const regions = new Map(builtInCatalogue.regions);
    regions.set('clinic-whisker-pad', {
      code: 'clinic-whisker-pad',
      display: 'Whisker pad',
      section: 'skin',
      laterality: 'paired',
      methods: ['inspection'],
    });
    const statements = [abnormal({ code: 'clinic-whisker-pad', side: 'left' }, 1)];
    const html = toHtml(
      { ...empty, statements },
      { checks: { catalogue: { ...builtInCatalogue, regions } } },
    );
    expect(unanswered(html)).toEqual([]);
    expect(html).toContain('Whisker pad, left');
  });
});
