import { describe, expect, it } from 'vitest';
import type { Statement } from '../../../src/index.ts';
import { front, profile } from '../../../src/report/drawing/face-views.ts';
import { toHtml } from '../../../src/report/index.ts';
import { emptyExam } from '../empty-exam.ts';
import { type DrawnView, marksOn, numbersOn, ofClass, parseDrawing } from './parsed-drawing.ts';

/** A region of each view that is drawn to scale. */
const places = [
  {
    region: 'cheek-buccal',
    name: 'Buccal (lower) cheek',
    id: 'view-front',
    scale: front.scale ?? 0,
  },
  { region: 'temple', name: 'Temple', id: 'view-profile-right', scale: profile.scale ?? 0 },
] as const;
type Place = (typeof places)[number];
const [inFront] = places;

const lesion = (
  key: string,
  { region }: Place = inFront,
  side: 'right' | 'both' = 'right',
): Statement => ({
  key,
  kind: 'finding',
  finding: 'skin-lesion',
  presence: 'present',
  region,
  side,
});

const size = (
  about: string,
  measure: 'lesion-max' | 'lesion-perp',
  value: string,
  { region }: Place = inFront,
  unit = 'mm',
): Statement => ({
  key: `${about}-${measure}`,
  kind: 'measurement',
  measure,
  region,
  side: 'right',
  value,
  unit,
  about,
});

function viewsOf(...statements: Statement[]): ReadonlyMap<string, DrawnView> {
  return parseDrawing(toHtml({ ...emptyExam('skin-lesion'), statements })).views;
}

function viewOf(id: string, ...statements: Statement[]): DrawnView {
  const found = viewsOf(...statements).get(id);
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
}

/** Where a region lies on the right of a view. */
function middleOf(drawn: DrawnView, { name }: Place): { x: number; y: number } {
  const [mark] = marksOn(drawn).filter(({ title }) => title.startsWith(`${name}, right`));
  if (mark === undefined) throw new Error(`no ${name}`);
  return { x: mark.x, y: mark.y };
}

describe.each(places)('a measured lesion in $id', (place) => {
  const cases = [
    { said: 'both diameters', sizes: ['10', '6.5'], long: 10, across: 6.5 },
    { said: 'the smaller first', sizes: ['6.5', '10'], long: 10, across: 6.5 },
    { said: 'one diameter', sizes: ['8'], long: 8, across: 8 },
    { said: 'what is larger than the face', sizes: ['400', '5'], long: 60, across: 5 },
  ];
  const measures = ['lesion-max', 'lesion-perp'] as const;

  it.each(cases)('is drawn to scale, its number above: $said', ({ sizes, long, across }) => {
    const measured = sizes.map((value, at) =>
      size('a', measures[at] ?? 'lesion-max', value, place),
    );
    const drawn = viewOf(place.id, lesion('a', place), ...measured);
    const { x, y } = middleOf(drawn, place);
    const [radius, height] = [(long * place.scale) / 2, (across * place.scale) / 2];
    const tenth = (value: number) => String(Math.round(value * 10) / 10);
    expect(ofClass(drawn, 'lesion').map(({ tag, of }) => [tag, of])).toEqual([
      [
        'ellipse',
        { cx: String(x), cy: String(y), rx: tenth(radius), ry: tenth(height), class: 'lesion' },
      ],
    ]);
    const [number, ...others] = numbersOn(drawn);
    expect([number?.number, number?.x, others]).toEqual(['1', x, []]);
    // The number has a radius of 9.5: it covers nothing of the lesion and stands close to it.
    const gap = y - height - ((number?.y ?? 0) + 9.5);
    expect(gap).toBeGreaterThan(0);
    expect(gap).toBeLessThan(10);
    // A line leads from the number to the middle of the lesion.
    expect(ofClass(drawn, 'lead-line').map(({ tag, of }) => [tag, of['d']])).toEqual([
      ['path', `M${x} ${(number?.y ?? 0) + 9}V${y}`],
    ]);
  });

  it('is drawn in this view alone', () => {
    const views = viewsOf(lesion('a', place), size('a', 'lesion-max', '10', place));
    const drawn = [...views].filter(([, one]) => ofClass(one, 'lesion').length > 0);
    expect(drawn.map(([id]) => id)).toEqual([place.id]);
  });

  it('is not drawn without a size in millimetres; its number then stands in its place', () => {
    const inches = size('a', 'lesion-max', '1', place, '[in_i]');
    for (const statements of [[], [inches]]) {
      const drawn = viewOf(place.id, lesion('a', place), ...statements);
      expect([...ofClass(drawn, 'lesion'), ...ofClass(drawn, 'lead-line')]).toEqual([]);
      expect(numbersOn(drawn)).toEqual([{ number: '1', ...middleOf(drawn, place) }]);
    }
  });
});

describe('numbers of one place', () => {
  it.each([1, 2, 3, 4, 5, 7])('%i stand in rows of three, centred', (count) => {
    const keys = Array.from({ length: count }, (_, at) => `k${at}`);
    const drawn = viewOf(inFront.id, ...keys.map((key) => lesion(key)));
    const { x, y } = middleOf(drawn, inFront);
    const row = Math.min(3, count);
    expect(numbersOn(drawn)).toEqual(
      keys.map((_, at) => ({
        number: String(at + 1),
        x: x + 20 * ((at % 3) - (row - 1) / 2),
        y: y + 20 * Math.floor(at / 3),
      })),
    );
  });

  it('stand above the tallest of the lesions that were measured', () => {
    const drawn = viewOf(
      inFront.id,
      lesion('a'),
      lesion('b'),
      lesion('c'),
      size('a', 'lesion-max', '5'),
      size('b', 'lesion-max', '20'),
    );
    const { y } = middleOf(drawn, inFront);
    expect(ofClass(drawn, 'lesion').length).toBe(2);
    for (const one of numbersOn(drawn)) expect(one.y).toBe(y - 10 * inFront.scale - 15);
  });

  it('lead to their lines; the first of a number is where its line leads back', () => {
    const views = viewsOf(lesion('a', inFront, 'both'));
    const badges = [...views].flatMap(([id, one]) =>
      ofClass(one, 'badge').map((badge) => ({ id, badge })),
    );
    const link = {
      href: '#sign-1',
      class: 'badge',
      'aria-label': '1, What is abnormal',
      'aria-describedby': 'view-front',
    };
    expect(badges.map(({ id, badge }) => [id, badge.of])).toEqual([
      ['view-front', { ...link, id: 'mark-1' }],
      ['view-front', link],
    ]);
    for (const { badge } of badges) {
      const [circle, text] = badge.inside;
      expect([circle?.tag, circle?.of['r'], text?.tag, text?.text]).toEqual([
        'circle',
        '9.5',
        'text',
        '1',
      ]);
      expect([text?.of['x'], Number(text?.of['y'])]).toEqual([
        circle?.of['cx'],
        Number(circle?.of['cy']) + 4,
      ]);
    }
  });
});
