import { type DefaultTreeAdapterTypes, parse } from 'parse5';

type Element = DefaultTreeAdapterTypes.Element;

/** An element of a drawing with what it is drawn in, as an HTML parser of the standard (parse5) has it. */
export interface Shape {
  readonly tag: string;
  readonly of: Readonly<Record<string, string>>;
  /** Of the element alone, without that of elements in it. */
  readonly text: string;
  /** With that of elements in it. */
  readonly whole: string;
  readonly inside: readonly Shape[];
}

/** A view with its field: `top` is above the body, for words. */
export interface DrawnView {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly top: number;
  readonly view: Shape;
  /** All elements in it, the outer before the inner. */
  readonly shapes: readonly Shape[];
}

/** Views of a page by the id that names them, `view-profile-right`, and the legend's glyph of each mark. */
export interface Drawing {
  readonly views: ReadonlyMap<string, DrawnView>;
  readonly glyphs: ReadonlyMap<string, string>;
  readonly legend: readonly string[];
  /** What no view shows, line by line. */
  readonly beside: readonly string[];
}

export function parseDrawing(html: string): Drawing {
  const page = shapeOf(parse(html).childNodes.find(isElement));
  const views = every(page)
    .filter(({ tag, of }) => tag === 'svg' && of['class']?.startsWith('view '))
    .map((view): [string, DrawnView] => {
      const [, top = 0, width = 0, full = 0] = (view.of['viewBox'] ?? '').split(' ').map(Number);
      const shapes = view.inside.flatMap(every);
      const title = shapes.find(({ of }) => of['id'] === view.of['aria-labelledby']);
      const drawn = { title: title?.text ?? '', width, height: full + top, top, view, shapes };
      return [view.of['aria-labelledby'] ?? '', drawn];
    });
  const legend = every(page).find(({ of }) => of['class'] === 'legend')?.inside ?? [];
  return {
    views: new Map(views),
    glyphs: new Map(
      legend.flatMap(({ inside: [key] }): [string, string][] =>
        key === undefined ? [] : [[(key.of['class'] ?? '').replace('key ', ''), key.text]],
      ),
    ),
    legend: legend.map(({ text }) => text.trim()),
    beside: (every(page).find(({ of }) => of['class'] === 'wholes')?.inside ?? []).map(
      ({ whole }) => whole.trim(),
    ),
  };
}

export function every(shape: Shape): Shape[] {
  return [shape, ...shape.inside.flatMap(every)];
}

/** Elements of a class, wherever they stand. */
export function ofClass({ shapes }: DrawnView, name: string): Shape[] {
  return shapes.filter(({ of }) => of['class']?.split(' ').includes(name));
}

export function numberOf({ of }: Shape, name: string): number {
  const value = of[name];
  if (value === undefined) throw new Error(`no ${name}`);
  return Number(value);
}

/** Numbers on a view with their places. */
export function numbersOn(view: DrawnView): { number: string; x: number; y: number }[] {
  return ofClass(view, 'badge').map(({ inside: [circle, text] }) => {
    if (circle === undefined || text === undefined) throw new Error('a number without its circle');
    return { number: text.text, x: numberOf(circle, 'cx'), y: numberOf(circle, 'cy') };
  });
}

/** A mark with its words, its ellipse and its glyph. */
export interface ShownMark {
  readonly title: string;
  readonly mark: string;
  readonly glyph: string | undefined;
  readonly x: number;
  readonly y: number;
  readonly before: Shape | undefined;
  readonly ellipse: Shape;
}

export function marksOn({ shapes }: DrawnView): ShownMark[] {
  return shapes
    .filter(({ tag, inside }) => tag === 'g' && inside[0]?.tag === 'title')
    .map(({ inside: [title, ellipse, ...rest] }) => {
      if (title === undefined || ellipse?.tag !== 'ellipse') throw new Error('a mark without form');
      return {
        title: title.text,
        mark: (ellipse.of['class'] ?? '').replace('mark ', ''),
        glyph: rest.find(({ of }) => of['class'] === 'symbol')?.text,
        x: numberOf(ellipse, 'cx'),
        y: numberOf(ellipse, 'cy'),
        before: rest.find(({ of }) => of['class'] === 'mark before'),
        ellipse,
      };
    });
}

function isElement(node: DefaultTreeAdapterTypes.ChildNode): node is Element {
  return 'tagName' in node;
}

function shapeOf(element: Element | undefined): Shape {
  if (element === undefined) throw new Error('no element');
  const inside = new Map(element.childNodes.filter(isElement).map((one) => [one, shapeOf(one)]));
  const textOf = (deep: boolean): string =>
    element.childNodes
      .map((node) => {
        if ('value' in node) return node.value;
        return deep && isElement(node) ? (inside.get(node)?.whole ?? '') : '';
      })
      .join('');
  return {
    tag: element.tagName,
    of: Object.fromEntries(element.attrs.map(({ name, value }) => [name, value])),
    text: textOf(false),
    whole: textOf(true),
    inside: [...inside.values()],
  };
}
