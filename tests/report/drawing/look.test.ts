import { describe, expect, it } from 'vitest';
import type { Statement } from '../../../src/index.ts';
import { front } from '../../../src/report/drawing/face-views.ts';
import { drawingStyle } from '../../../src/report/drawing/style.ts';
import { views as definitions } from '../../../src/report/drawing/views.ts';
import { toHtml } from '../../../src/report/index.ts';
import { emptyExam } from '../empty-exam.ts';
import { savedExample } from '../saved-examples.ts';
import {
  type DrawnView,
  marksOn,
  numberOf,
  ofClass,
  parseDrawing,
  type Shape,
} from './parsed-drawing.ts';

/** Elements of SVG that the drawing uses, with what places each. */
const placed: Readonly<Record<string, readonly string[]>> = {
  title: [],
  g: [],
  a: ['href'],
  path: ['d'],
  ellipse: ['cx', 'cy', 'rx', 'ry'],
  circle: ['cx', 'cy', 'r'],
  text: ['x', 'y'],
};

const sensation: Statement = {
  key: 'felt',
  kind: 'sensation',
  point: 'v1',
  side: 'right',
  results: [{ modality: 'light-touch', result: 'normal' }],
};

function viewsOf(...statements: Statement[]): ReadonlyMap<string, DrawnView> {
  return parseDrawing(toHtml({ ...emptyExam('full'), statements })).views;
}

/** Where nothing was said but of one point of sensation: every view, without numbers. */
function silent(): ReadonlyMap<string, DrawnView> {
  return viewsOf(sensation);
}

function both(): readonly (readonly [string, DrawnView])[] {
  return [...silent(), ...parseDrawing(toHtml(savedExample('yearly-check'))).views];
}

/** Definitions of views with the name of each drawing made from it. */
const sidedViews = definitions.flatMap((one) =>
  (one.from === 'side' ? ['-right', '-left'] : ['']).map((side) => ({
    ...one,
    name: `view-${one.id}${side}`,
  })),
);

function turnOf({ of }: Shape): number {
  return Number(/^rotate\((-?[\d.]+) /.exec(of['transform'] ?? '')?.[1] ?? 0);
}

/** A mark as it is drawn on the other side of a field. */
function mirrored(mark: Shape, width: number): unknown[] {
  const [x, y, rx, ry] = ['cx', 'cy', 'rx', 'ry'].map((name) => numberOf(mark, name));
  return [width - (x ?? 0), y, rx, ry, -turnOf(mark) || 0];
}

function shapeOf(mark: Shape): unknown[] {
  return [...['cx', 'cy', 'rx', 'ry'].map((name) => numberOf(mark, name)), turnOf(mark) || 0];
}

function drawnAs(views: ReadonlyMap<string, DrawnView>, name: string): DrawnView {
  const found = views.get(name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
}

/** Words may stand above the body, all else in the field itself. */
function liesOutside({ tag, of }: Shape, { top, width, height }: DrawnView): boolean {
  const [x, y] = [Number(of['x'] ?? of['cx']), Number(of['y'] ?? of['cy'])];
  return x <= 0 || x >= width || y <= (tag === 'text' ? top : 0) || y >= height;
}

function sorted(shapes: unknown[][]): string[] {
  return shapes.map((shape) => shape.join(' ')).sort();
}

describe('the drawing', () => {
  it('has each view once, those from the side on both sides, each named for those who cannot see it', () => {
    const views = silent();
    const titles = Object.fromEntries([...views].map(([id, { title }]) => [id, title]));
    expect(titles).toEqual({
      'view-profile-right': 'Skin from the side, right',
      'view-front': 'From the front',
      'view-profile-left': 'Skin from the side, left',
      'view-deep-right': 'Below the skin, right',
      'view-neck': 'Neck, below the skin',
      'view-nose': 'Inside of the nose, sinuses',
      'view-deep-left': 'Below the skin, left',
      'view-eye-right': 'Eye, right',
      'view-ear-right': 'Ear and eardrum, right',
      'view-sensation': 'Sensation',
      'view-eye-left': 'Eye, left',
      'view-ear-left': 'Ear and eardrum, left',
    });
    for (const [id, { view }] of views) {
      const [, name, side] = /^view-([a-z]+)(?:-(right|left))?$/.exec(id) ?? [];
      expect(view.of['role']).toBe('group');
      expect(view.of['class']).toBe(`view view-${name}${side ? ` of-${side}` : ''}`);
    }
  });

  it('is made of elements of SVG, each placed', () => {
    for (const [id, { shapes }] of both()) {
      for (const { tag, of, inside } of shapes) {
        const missing = (placed[tag] ?? [`no ${tag}`]).filter((name) => !Object.hasOwn(of, name));
        expect([id, tag, missing]).toEqual([id, tag, []]);
        if (tag === 'g') expect(inside.length).toBeGreaterThan(0);
      }
    }
  });

  it('looks as the style says', () => {
    const styled = [...drawingStyle.matchAll(/\.([a-z-]+)/g)].map(([, name]) => name);
    // These look as their kind does.
    const known = new Set([...styled, 'start', 'fine']);
    for (const { tag, of } of both().flatMap(([, { shapes }]) => shapes)) {
      const names = of['class']?.split(' ') ?? [];
      expect(names.filter((name) => !known.has(name))).toEqual([]);
      if (tag === 'path' || tag === 'ellipse') expect(names, tag).not.toEqual([]);
      if (tag === 'a') expect(names).toEqual(['badge']);
    }
  });

  it('has nothing outside its field', () => {
    for (const [id, view] of both()) {
      const size = definitions.find((one) => one.id === id.split('-')[1]) ?? front;
      expect([id, view.top, view.width, view.height]).toEqual([id, -16, size.width, size.height]);
      expect(view.shapes.filter((shape) => liesOutside(shape, view))).toEqual([]);
    }
  });

  it('says right and left in words above the body, where they are', () => {
    for (const [id, view] of both()) {
      const said = ofClass(view, 'side').map(({ of, text }) => [
        text,
        of['class'],
        of['x'],
        of['y'],
      ]);
      const middle = [view.title, 'side middle', String(view.width / 2), '-4'];
      const right = ['right', 'side start', '2', '-4'];
      const left = ['left', 'side end', String(view.width - 2), '-4'];
      expect([id, said]).toEqual([
        id,
        /-(right|left)$/.test(id) ? [middle] : [right, middle, left],
      ]);
    }
  });

  it('has every line of its definition, mirrored where it is', () => {
    const views = silent();
    for (const { name, width, lines } of sidedViews) {
      const mirror = `translate(${width} 0) scale(-1 1)`;
      const expected = lines.flatMap(({ d, as, both: twice }) => [
        [d, `line ${as}`, undefined],
        ...(twice ? [[d, `line ${as}`, mirror]] : []),
      ]);
      const { shapes } = drawnAs(views, name);
      const paths = shapes.filter(({ tag }) => tag === 'path');
      const found = paths.map(({ of }) => [of['d'], of['class'], of['transform']]);
      expect([name, found]).toEqual([name, expected]);
      // The right side is the left in a mirror as a whole.
      const whole = shapes.find(({ tag, of }) => tag === 'g' && of['transform']);
      const right = name.endsWith('-right');
      expect(whole?.of['transform']).toBe(right ? mirror : undefined);
      expect(whole?.inside.length ?? 0).toBe(right ? lines.length : 0);
    }
  });

  it('has the same places on both sides, each the mirror of the other', () => {
    const views = silent();
    for (const { id, from, width, areas } of definitions) {
      const ellipses = (name: string) =>
        marksOn(drawnAs(views, name)).map(({ ellipse }) => ellipse);
      const [here, there] =
        from === 'side'
          ? [ellipses(`view-${id}-right`), ellipses(`view-${id}-left`)]
          : [ellipses(`view-${id}`), ellipses(`view-${id}`)];
      expect(sorted(here.map((mark) => mirrored(mark, width)))).toEqual(sorted(there.map(shapeOf)));
      const left = there.filter((one) => from === 'side' || numberOf(one, 'cx') >= width / 2);
      expect(sorted(left.map(shapeOf))).toEqual(
        sorted(areas.map(({ x, y, rx, ry, turn = 0 }) => [x, y, rx, ry, turn])),
      );
      for (const { of } of [...here, ...there]) {
        expect(of['transform'] ?? 'rotate(0 0 0)').toMatch(/^rotate\(-?[\d.]+ [\d.]+ [\d.]+\)$/);
        const turned = / (-?[\d.]+ -?[\d.]+)\)$/.exec(of['transform'] ?? '')?.[1];
        expect(turned ?? `${of['cx']} ${of['cy']}`).toBe(`${of['cx']} ${of['cy']}`);
      }
    }
  });
});
