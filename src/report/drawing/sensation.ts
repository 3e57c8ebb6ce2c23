import type { Mark } from '../../kinds/facets/page.ts';
import { sayingsOf, standingOf, subjectOf } from '../../kinds/registries/meanings.ts';
import { markOf } from '../../kinds/registries/pages.ts';
import type { Statement } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { type Content, element, type Html } from '../html.ts';
import type { Page } from '../page.ts';
import { badge } from './draw-view.ts';
import { front } from './face-views.ts';
import { markSymbols } from './marks.ts';

/**
 * Where each test point of sensation lies on the face from the front, for the left side, and the
 * borders of the three divisions of the trigeminal nerve and of the neck. Own drawing, after Gray H.,
 * Anatomy of the Human Body, 20th edition, 1918, areas of the skin nerves of the head.
 */
const points: Readonly<Record<string, readonly [x: number, y: number]>> = {
  v1: [190, 86],
  'v1-nose': [160, 190],
  'v1-cornea': [180, 138],
  v2: [198, 180],
  v3: [172, 264],
  'v3-pre': [225, 158],
  ga: [218, 226],
  lo: [246, 176],
  tc: [178, 306],
  sc: [230, 350],
};

const borders: readonly string[] = [
  'M158 204 C164 186 164 168 166 152 C176 150 190 148 204 138 C212 122 222 108 230 96',
  'M176 240 C188 228 206 210 220 192 C226 174 230 160 232 148',
  'M206 240 C216 232 222 218 224 196',
  'M150 282 C176 280 194 264 206 244',
];

const divisions: readonly (readonly [name: string, x: number, y: number])[] = [
  ['V1', 212, 66],
  ['V2', 214, 204],
  ['V3', 196, 240],
  ['C2, C3', 202, 292],
];

/** Whether a statement is of a point of sensation, which has its own map. */
export function isSensation(statement: Statement, catalogue: Catalogue): boolean {
  return pointOf(statement, catalogue) !== undefined;
}

function pointOf(statement: Statement, catalogue: Catalogue): string | undefined {
  const { table, code } = subjectOf(statement);
  if (table !== 'testPoints' || catalogue.testPoints.get(code)?.group !== 'sensation')
    return undefined;
  return Object.hasOwn(points, code) ? code : undefined;
}

/** The map of sensation with the mark of each point that was tested; nothing where none was. */
export function sensationView(page: Page, linked: Set<number>): Content {
  const { exam, catalogue, labels, teller } = page;
  const tested = exam.statements.filter((statement) => isSensation(statement, catalogue));
  if (tested.length === 0) return undefined;
  const flipped = `translate(${front.width} 0) scale(-1 1)`;
  const both = (d: string, as: string): Content => [
    element('path', { d, class: as }),
    element('path', { d, class: as, transform: flipped }),
  ];
  const marked = new Set<string>();
  return element(
    'svg',
    {
      viewBox: `0 -16 ${front.width} ${front.height + 16}`,
      role: 'group',
      'aria-labelledby': 'view-sensation',
      class: 'view view-sensation',
    },
    element('title', { id: 'view-sensation' }, labels.sensation),
    front.lines
      .filter(({ as }) => as !== 'hair')
      .map(({ d, as, both: mirrored }) =>
        mirrored ? both(d, `line ${as} pale`) : element('path', { d, class: `line ${as} pale` }),
      ),
    borders.map((d) => both(d, 'border')),
    element('text', { x: 2, y: -4, class: 'side start' }, teller.side('right')),
    element('text', { x: front.width / 2, y: -4, class: 'side middle' }, labels.sensation),
    element('text', { x: front.width - 2, y: -4, class: 'side end' }, teller.side('left')),
    divisions.map(([name, x, y]) => [
      element('text', { x, y, class: 'division' }, name),
      element('text', { x: front.width - x, y, class: 'division' }, name),
    ]),
    tested.map((statement) => point(page, statement, linked, marked)),
  );

  function point(
    { numbers }: Page,
    statement: Statement,
    known: Set<number>,
    drawn: Set<string>,
  ): Content {
    const code = pointOf(statement, catalogue) ?? '';
    const [x, y] = points[code] ?? [0, 0];
    const { side } = standingOf(statement, catalogue);
    const number = numbers.get(statement.key);
    // The comparison of the sides stands in the middle, above what it compares.
    const at = side === 'right' ? front.width - x : side === 'left' ? x : front.width / 2;
    const level = side === 'both' ? y - 22 : y;
    if (number !== undefined) return badge(page, number, at, level, known, 'view-sensation');
    const place = `${code}/${side}`;
    if (side === undefined || side === 'both' || drawn.has(place)) return undefined;
    drawn.add(place);
    return dot(statement, at, level);
  }

  function dot(statement: Statement, x: number, y: number): Html {
    const mark: Mark = isUntested(statement) ? 'not-examined' : 'normal';
    return element(
      'g',
      {},
      element('title', {}, `${teller.subject(statement)}: ${labels.marks[mark]}`),
      element('ellipse', { cx: x, cy: y, rx: 7, ry: 7, class: `mark ${mark}` }),
      element('text', { x, y: y + 3, class: 'symbol' }, markSymbols[mark]),
    );
  }

  function isUntested(statement: Statement): boolean {
    return markOf(statement, catalogue) !== 'sign' && saysNothing(statement, page);
  }
}

function saysNothing(statement: Statement, { catalogue }: Page): boolean {
  return !sayingsOf(statement, catalogue).some(({ polarity }) => polarity === 'denies');
}
