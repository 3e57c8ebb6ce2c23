import type { Mark } from '../../kinds/facets/page.ts';
import { type Content, element, type Html, joined, section, table } from '../html.ts';
import type { Page } from '../page.ts';
import { type Column, markSymbols, marksOf } from './marks.ts';
import { outline, type Shape, shapes } from './shapes.ts';

const MIDLINE = 200;

/** The drawing, its legend, and a table of every region, which says the same to those who cannot see it. */
export function mapPart(page: Page): Content {
  const { exam, catalogue, labels } = page;
  const mark = marksOf(exam, catalogue);
  return section(
    'map',
    labels.map,
    element('p', {}, labels.mapNote),
    element('div', { class: 'map' }, drawing(page, mark), legend(page)),
    element('details', {}, element('summary', {}, labels.everyRegion), regionTable(page, mark)),
  );
}

type MarkOf = (region: string, column: Column) => Mark;

function drawing(page: Page, mark: MarkOf): Html {
  const { labels, teller } = page;
  const sides: readonly [Column, number][] = [
    ['right', -1],
    ['left', 1],
  ];
  const places = shapes.flatMap((shape) =>
    shape.across === 0
      ? [place(page, shape, 'middle', MIDLINE, mark)]
      : sides.map(([column, sign]) =>
          place(page, shape, column, MIDLINE + sign * shape.across, mark),
        ),
  );
  return element(
    'svg',
    { viewBox: '0 0 400 480', role: 'img', 'aria-labelledby': 'map-title', class: 'drawing' },
    element('title', { id: 'map-title' }, `${labels.map}. ${labels.mapNote}`),
    outline.map((d) => element('path', { d, class: 'outline' })),
    element('text', { x: 20, y: 24, class: 'side' }, teller.side('right')),
    element('text', { x: 380, y: 24, class: 'side end' }, teller.side('left')),
    places,
  );
}

function place(page: Page, shape: Shape, column: Column, x: number, markOf: MarkOf): Html {
  const { labels, teller } = page;
  const mark = markOf(shape.region, column);
  const side = column === 'middle' ? undefined : column;
  return element(
    'g',
    {},
    element('title', {}, `${teller.place(shape.region, side)}: ${labels.marks[mark]}`),
    element('ellipse', { cx: x, cy: shape.y, rx: shape.rx, ry: shape.ry, class: `mark ${mark}` }),
    element('text', { x, y: shape.y + 4, class: 'symbol' }, markSymbols[mark]),
  );
}

function legend({ labels }: Page): Html {
  const marks: readonly Mark[] = ['sign', 'normal', 'partial', 'not-examined', 'said', 'silent'];
  return element(
    'div',
    {},
    element('h3', {}, labels.legend),
    element(
      'ul',
      { class: 'legend' },
      marks.map((mark) =>
        element(
          'li',
          {},
          element('span', { class: `key ${mark}`, 'aria-hidden': 'true' }, markSymbols[mark]),
          ` ${labels.marks[mark]}`,
        ),
      ),
    ),
  );
}

function regionTable({ catalogue, labels, teller }: Page, mark: MarkOf): Content {
  const rows = [...catalogue.regions.values()]
    .filter((region) => !region.group)
    .map(({ code, laterality }): Content[] => {
      const cell = (column: Column, possible: boolean): Content => {
        const found = mark(code, column);
        if (!possible && found === 'silent') return '';
        return joined(
          element('span', { class: `key ${found}`, 'aria-hidden': 'true' }, markSymbols[found]),
          ` ${labels.marks[found]}`,
        );
      };
      return [
        teller.display('regions', code),
        cell('right', laterality === 'paired' || laterality === 'crossing'),
        cell('left', laterality === 'paired' || laterality === 'crossing'),
        cell('middle', laterality !== 'paired'),
      ];
    });
  const { where, right, left, other } = labels.columns;
  return table({ caption: labels.map, head: [where, right, left, other], rows });
}
