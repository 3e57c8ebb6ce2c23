import type { Mark } from '../../kinds/facets/page.ts';
import type { Content, Html } from '../html.ts';
import { element } from '../html.ts';
import type { Page } from '../page.ts';
import { type MarkOf, markSymbols, type PlacedNumbers } from './marks.ts';
import type { Area, View } from './view.ts';
import type { Column } from './views.ts';

/** What a drawing shows besides the body. */
export interface Shown {
  readonly mark: MarkOf;
  readonly prior: MarkOf | undefined;
  readonly numbers: PlacedNumbers;
  /** Greatest diameter and the one across, in millimetres, of what has a number. */
  readonly sizes: ReadonlyMap<number, readonly [string, string]>;
  /** Numbers drawn already: the first mark of a number is where links lead. */
  readonly linked: Set<number>;
}

/** An area of a view as it is drawn on one side. */
interface Spot extends Area {
  readonly column: Column;
}

/** A view; one from the side is drawn for one side, that of the left or its mirror. */
export function drawView(
  page: Page,
  view: View,
  shown: Shown,
  side: 'right' | 'left' | undefined,
): Html {
  const { labels, teller } = page;
  const { width, height, id } = view;
  const name = side === undefined ? labels.views[id] : `${labels.views[id]}, ${teller.side(side)}`;
  const title = `view-${id}${side === undefined ? '' : `-${side}`}`;
  const spots = spotsOf(view, side);
  return element(
    'svg',
    {
      viewBox: `0 -16 ${width} ${height + 16}`,
      role: 'group',
      'aria-labelledby': title,
      class: `view view-${id}${side === undefined ? '' : ` of-${side}`}`,
    },
    element('title', { id: title }, name),
    linesOf(view, side),
    sideLabels(page, view, side),
    spots.map((spot) => area(page, spot, shown)),
    spots.map((spot) => lesion(view, spot, shown)),
    spots.map((spot) => badges(page, view, spot, shown, title)),
  );
}

function linesOf(view: View, side: 'right' | 'left' | undefined): Content {
  const flipped = `translate(${view.width} 0) scale(-1 1)`;
  const paths = view.lines.flatMap(({ d, as, both }) => [
    element('path', { d, class: `line ${as}` }),
    both && element('path', { d, class: `line ${as}`, transform: flipped }),
  ]);
  return side === 'right' ? element('g', { transform: flipped }, paths) : paths;
}

/** Right and left as words: on both edges of a view from the front, above one from the side. */
function sideLabels(
  { teller, labels }: Page,
  { from, width, id }: View,
  side: 'right' | 'left' | undefined,
): Content {
  const text = (x: number, anchor: string, words: string): Content =>
    element('text', { x, y: -4, class: `side ${anchor}` }, words);
  if (from === 'side' && side !== undefined) {
    return text(width / 2, 'middle', `${labels.views[id]}, ${teller.side(side)}`);
  }
  return [
    text(2, 'start', teller.side('right')),
    text(width / 2, 'middle', labels.views[id]),
    text(width - 2, 'end', teller.side('left')),
  ];
}

function spotsOf({ from, width, areas }: View, side: 'right' | 'left' | undefined): Spot[] {
  const mirrored = (area: Area): Area => ({
    ...area,
    x: width - area.x,
    ...(area.turn !== undefined && { turn: -area.turn }),
  });
  if (from === 'side') {
    return areas.map((area) => ({
      ...(side === 'right' ? mirrored(area) : area),
      column: side ?? 'left',
    }));
  }
  return areas.flatMap((area): Spot[] =>
    area.x === width / 2
      ? [{ ...area, column: 'middle' }]
      : [
          { ...mirrored(area), column: 'right' },
          { ...area, column: 'left' },
        ],
  );
}

function area(page: Page, spot: Spot, { mark, prior }: Shown): Html {
  const { labels, teller } = page;
  const { x, y, rx, ry, turn, region, column } = spot;
  const now = mark(region, column);
  const side = column === 'middle' ? undefined : column;
  const before = prior?.(region, column) === 'sign';
  const shape = { cx: x, cy: y, rx, ry, transform: turned(turn, x, y) };
  return element(
    'g',
    {},
    element(
      'title',
      {},
      `${teller.place(region, side)}: ${labels.marks[now]}${before ? `; ${labels.priorMark}` : ''}`,
    ),
    element('ellipse', { ...shape, class: `mark ${now}` }),
    before && element('ellipse', { ...shape, rx: rx + 2.5, ry: ry + 2.5, class: 'mark before' }),
    now !== 'sign' && element('text', { x, y: y + 3, class: 'symbol' }, symbol(page, region, now)),
  );
}

function turned(turn: number | undefined, x: number, y: number): string | undefined {
  return turn === undefined ? undefined : `rotate(${turn} ${x} ${y})`;
}

/** A level of lymph nodes is told by its name as well. */
function symbol({ labels }: Page, region: string, mark: Mark): string {
  const level = Object.hasOwn(labels.shortPlaces, region) ? labels.shortPlaces[region] : undefined;
  return `${level === undefined ? '' : `${level} `}${mark === 'silent' ? '' : markSymbols[mark]}`.trim();
}

/** Most that is drawn of a size, in millimetres: what is larger would hide the face. */
const MOST = 60;

function lesion({ scale }: View, { region, column, x, y }: Spot, shown: Shown): Content {
  if (scale === undefined) return undefined;
  return shown.numbers.at(region, column).map((number) => {
    const [long, across] = shown.sizes.get(number) ?? [];
    if (long === undefined || across === undefined) return undefined;
    const radius = (size: string): number =>
      Math.round(((Math.min(Number(size), MOST) * scale) / 2) * 10) / 10;
    return element('ellipse', {
      cx: x,
      cy: y,
      rx: radius(long),
      ry: radius(across),
      class: 'lesion',
    });
  });
}

/** Distance of numbers that stand side by side or one below the other. */
export const STEP = 20;

/** Most numbers in a row. */
const IN_ROW = 3;

/**
 * Numbers of the signs of a place; each leads to its line. Where a lesion is drawn they stand above it,
 * with a line down to it.
 */
function badges(page: Page, { scale }: View, spot: Spot, shown: Shown, title: string): Content {
  const numbers = shown.numbers.at(spot.region, spot.column);
  const across =
    scale === undefined ? [] : numbers.flatMap((one) => shown.sizes.get(one)?.[1] ?? []);
  const tallest = across.reduce((most, size) => Math.max(most, Math.min(Number(size), MOST)), 0);
  const top = tallest === 0 ? 0 : (tallest * (scale ?? 0)) / 2 + 15;
  const lead = element('path', {
    d: `M${spot.x} ${spot.y - top + 9}V${spot.y}`,
    class: 'lead-line',
  });
  return [top > 0 && lead, numberRows(page, numbers, spot.x, spot.y - top, shown.linked, title)];
}

/** Numbers side by side, at most three in a row, the first row in the middle of `x` and `y`. */
export function numberRows(
  page: Page,
  numbers: readonly number[],
  x: number,
  y: number,
  linked: Set<number>,
  view: string,
): Content {
  const inRow = Math.min(IN_ROW, numbers.length);
  return numbers.map((number, at) =>
    badge(
      page,
      number,
      x + ((at % IN_ROW) - (inRow - 1) / 2) * STEP,
      y + Math.floor(at / IN_ROW) * STEP,
      linked,
      view,
    ),
  );
}

/** Rows that so many numbers fill. */
export function rowsOf(numbers: readonly number[]): number {
  return Math.ceil(numbers.length / IN_ROW);
}

/** The first mark of a number is the one to which its line in the text leads back. */
function badge(
  { labels }: Page,
  number: number,
  x: number,
  y: number,
  linked: Set<number>,
  view: string,
): Html {
  const id = linked.has(number) ? undefined : `mark-${number}`;
  linked.add(number);
  return element(
    'a',
    {
      href: `#sign-${number}`,
      id,
      class: 'badge',
      'aria-label': `${number}, ${labels.abnormal}`,
      'aria-describedby': view,
    },
    element('circle', { cx: x, cy: y, r: 9.5 }),
    element('text', { x, y: y + 4 }, String(number)),
  );
}
