import { describe, expect, it } from 'vitest';
import type { Statement } from '../../../src/index.ts';
import { toHtml } from '../../../src/report/index.ts';
import { builtInCatalogue } from '../../../src/terminology/catalogue.ts';
import { emptyExam } from '../empty-exam.ts';
import { type DrawnView, marksOn, numbersOn, ofClass, parseDrawing } from './parsed-drawing.ts';

type Side = 'right' | 'left' | 'midline';
type Results = Readonly<Record<string, string>>;

const points = [...builtInCatalogue.testPoints.values()].filter(
  ({ group }) => group === 'sensation',
);
const reason = { code: 'time' };

function felt(point: string, side: Side, results: Results, key = `${point}-${side}`): Statement {
  return {
    key,
    kind: 'sensation',
    point,
    side,
    results: Object.entries(results).map(([modality, result]) => ({
      modality,
      result,
      ...(result === 'not-tested' && { reason }),
    })),
  };
}

function compared(point: string, modality: string, result: 'equal' | 'right-less'): Statement {
  return { key: `${point}-${modality}`, kind: 'sensation-comparison', point, modality, result };
}

function mapOf(...statements: Statement[]): DrawnView {
  const { views } = parseDrawing(toHtml({ ...emptyExam('facial-numbness'), statements }));
  const view = views.get('view-sensation');
  if (view === undefined) throw new Error('no map of sensation');
  return view;
}

const normal = { 'light-touch': 'normal' };
const reduced = { 'light-touch': 'reduced' };

describe('the map of sensation', () => {
  it('is there where sensation was tested, and only there', () => {
    const other: Statement = {
      key: 'm',
      kind: 'movement',
      test: 'frontalis',
      side: 'left',
      grade: 'trace',
    };
    for (const statements of [[], [other]]) {
      const { views } = parseDrawing(toHtml({ ...emptyExam('facial-numbness'), statements }));
      expect(views.has('view-sensation')).toBe(false);
    }
    const map = mapOf(other, felt('v1', 'left', normal));
    expect([marksOn(map).length, numbersOn(map)]).toEqual([1, []]);
  });

  it('shows the face without hair, pale, both halves of it, the borders of the nerves, and their names', () => {
    const map = mapOf(felt('v1', 'left', normal));
    expect(ofClass(map, 'hair')).toEqual([]);
    const lines = ofClass(map, 'line');
    expect(lines.length).toBeGreaterThan(20);
    for (const { of } of lines) expect(of['class']).toMatch(/^line [a-z]+ pale$/);
    const borders = ofClass(map, 'border').map(({ of }) => [of['d'], of['transform']]);
    expect(borders.length).toBe(8);
    const flipped = `translate(${map.width} 0) scale(-1 1)`;
    expect(borders.filter(([, transform]) => transform === flipped).map(([d]) => d)).toEqual(
      borders.filter(([, transform]) => transform === undefined).map(([d]) => d),
    );
    const names = ofClass(map, 'division').map(({ text, of }) => ({
      text,
      x: Number(of['x']),
      y: of['y'],
    }));
    expect(names.map(({ text }) => text)).toEqual([
      'V1',
      'V1',
      'V2',
      'V2',
      'V3',
      'V3',
      'C2, C3',
      'C2, C3',
    ]);
    for (const { text, x, y } of names) expect(names).toContainEqual({ text, x: map.width - x, y });
    expect(names.filter(({ x }) => x < map.width / 2).length).toBe(4);
  });

  it.each(points.map(({ code, display }) => ({ code, display })))(
    '$code: has its place on each side, the right of the patient on the left',
    ({ code, display }) => {
      const map = mapOf(felt(code, 'right', normal), felt(code, 'left', normal));
      const [right, left, ...others] = marksOn(map);
      expect(others).toEqual([]);
      expect([right?.title, left?.title]).toEqual(
        [display, display].map((text) => `${text}: Examined, no abnormality found`),
      );
      expect(right?.y).toBe(left?.y);
      expect((right?.x ?? 0) + (left?.x ?? 0)).toBe(map.width);
      expect(right?.x).toBeLessThan(map.width / 2);
      const numbered = mapOf(felt(code, 'right', reduced), felt(code, 'left', reduced));
      expect(numbersOn(numbered)).toEqual([
        { number: '1', x: right?.x, y: right?.y },
        { number: '2', x: left?.x, y: left?.y },
      ]);
      expect(marksOn(numbered)).toEqual([]);
    },
  );

  it('has no two points in one place', () => {
    const places = marksOn(mapOf(...points.map(({ code }) => felt(code, 'left', normal))));
    expect(places.length).toBe(points.length);
    for (const [at, one] of places.entries()) {
      for (const other of places.slice(at + 1)) {
        expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThan(14);
      }
    }
  });

  // What each result says: terminology/sensation-results.json. A dot with a tick claims normality.
  it.each([
    { results: [{ 'light-touch': 'normal' }], mark: 'normal', glyph: '✓' },
    { results: [{ 'light-touch': 'normal', pinprick: 'normal' }], mark: 'normal', glyph: '✓' },
    { results: [{ 'light-touch': 'not-tested' }], mark: 'not-examined', glyph: '×' },
    {
      results: [{ 'light-touch': 'unable', pinprick: 'not-tested' }],
      mark: 'not-examined',
      glyph: '×',
    },
    { results: [{ 'light-touch': 'normal', pinprick: 'not-tested' }], mark: 'partial', glyph: '½' },
    {
      results: [{ 'light-touch': 'normal' }, { pinprick: 'not-tested' }],
      mark: 'partial',
      glyph: '½',
    },
    {
      results: [{ pinprick: 'not-tested' }, { 'light-touch': 'normal' }],
      mark: 'partial',
      glyph: '½',
    },
    { results: [{ 'light-touch': 'normal' }, { pinprick: 'normal' }], mark: 'normal', glyph: '✓' },
  ] as { results: Results[]; mark: string; glyph: string }[])(
    '$results is shown as $mark',
    ({ results, mark, glyph }) => {
      const map = mapOf(...results.map((one, at) => felt('v2', 'left', one, `k${at}`)));
      expect(marksOn(map).map((one) => [one.mark, one.glyph])).toEqual([[mark, glyph]]);
      expect(numbersOn(map)).toEqual([]);
      const [shape] = ofClass(map, 'mark');
      expect([shape?.of['rx'], shape?.of['ry']]).toEqual(['7', '7']);
      const [symbol] = ofClass(map, 'symbol');
      expect([symbol?.of['x'], Number(symbol?.of['y'])]).toEqual([
        shape?.of['cx'],
        Number(shape?.of['cy']) + 3,
      ]);
    },
  );

  it('every result that deviates is numbered', () => {
    const deviating = [...builtInCatalogue.sensationResults.values()].filter(
      ({ usual, untested }) => !usual && !untested,
    );
    expect(deviating.length).toBeGreaterThan(5);
    for (const { code } of deviating) {
      const map = mapOf(felt('v2', 'left', { pinprick: code }));
      expect([code, numbersOn(map).length, marksOn(map)]).toEqual([code, 1, []]);
    }
  });

  it.each([normal, { 'light-touch': 'not-tested' }])(
    'a result that deviates is not hidden by $light-touch at the same point, in either order',
    (other) => {
      const deviating = felt('v2', 'left', { pinprick: 'reduced' }, 'deviating');
      for (const statements of [
        [deviating, felt('v2', 'left', other)],
        [felt('v2', 'left', other), deviating],
      ]) {
        const map = mapOf(...statements);
        expect([numbersOn(map).length, marksOn(map)]).toEqual([1, []]);
      }
    },
  );

  it('shows two deviations of one point side by side', () => {
    const map = mapOf(
      felt('v2', 'left', reduced, 'a'),
      felt('v2', 'left', { pinprick: 'absent' }, 'b'),
    );
    const [one, two] = numbersOn(map);
    expect([one?.number, two?.number, (two?.x ?? 0) - (one?.x ?? 0)]).toEqual(['1', '2', 20]);
    expect(one?.y).toBe(two?.y);
  });

  it('shows a comparison of the sides in the middle, above its point; one that found none is not drawn', () => {
    const [point] = marksOn(mapOf(felt('v2', 'left', normal)));
    const map = mapOf(compared('v2', 'light-touch', 'right-less'));
    expect(numbersOn(map)).toEqual([{ number: '1', x: map.width / 2, y: (point?.y ?? 0) - 22 }]);
    expect(marksOn(map)).toEqual([]);
    const [badge] = ofClass(map, 'badge');
    expect(badge?.of['aria-describedby']).toBe('view-sensation');
    const equal = mapOf(compared('v2', 'light-touch', 'equal'));
    expect([marksOn(equal), numbersOn(equal)]).toEqual([[], []]);
  });

  it('has comparisons in the order of their points, from the brow down', () => {
    const order = ['sc', 'v3', 'v1', 'v2'];
    const alone = order.map(
      (code) => numbersOn(mapOf(compared(code, 'light-touch', 'right-less')))[0]?.y ?? 0,
    );
    const map = mapOf(...order.map((code) => compared(code, 'light-touch', 'right-less')));
    expect(numbersOn(map).map(({ y }) => y)).toEqual(alone.sort((one, other) => one - other));
  });

  it('covers no comparison by another, however many there are', () => {
    const all = points.flatMap(({ code, modalities = [] }) =>
      modalities.map((modality) => compared(code, modality, 'right-less')),
    );
    const map = mapOf(...all);
    const numbers = numbersOn(map);
    expect(numbers.length).toBe(all.length);
    for (const [at, one] of numbers.entries()) {
      expect(one.y).toBeLessThan(map.height);
      for (const other of numbers.slice(at + 1)) {
        expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThanOrEqual(19);
      }
    }
  });

  it('keeps a point that was felt in the midline there', () => {
    const map = mapOf(felt('v1', 'midline', normal));
    expect(marksOn(map).map(({ x }) => x)).toEqual([map.width / 2]);
  });
});
