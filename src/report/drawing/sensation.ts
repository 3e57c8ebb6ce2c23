import type { Mark } from '../../kinds/facets/page.ts';
import { sayingsOf, standingOf, subjectOf } from '../../kinds/registries/meanings.ts';
import type { Side } from '../../model/primitive.ts';
import type { Statement } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { type Content, element } from '../html.ts';
import type { Page } from '../page.ts';
import { numberRows, rowsOf, STEP } from './draw-view.ts';
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
  const spots = spotsOf(tested, catalogue);
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
    spots.filter((spot) => !isComparison(spot)).map((spot) => drawSpot(page, spot, linked)),
    comparisons(page, spots.filter(isComparison), linked),
  );
}

/** A point on one side, or the comparison of its sides, with all that was said there. */
interface Spot {
  readonly side: Side | undefined;
  readonly x: number;
  readonly y: number;
  readonly statements: Statement[];
}

function spotsOf(tested: readonly Statement[], catalogue: Catalogue): readonly Spot[] {
  const spots = new Map<string, Spot>();
  for (const statement of tested) {
    const code = pointOf(statement, catalogue) ?? '';
    const { side } = standingOf(statement, catalogue);
    const [left, y] = points[code] ?? [0, 0];
    const x = side === 'right' ? front.width - left : side === 'left' ? left : front.width / 2;
    const spot = spots.get(`${code}/${side}`) ?? { side, x, y, statements: [] };
    spots.set(`${code}/${side}`, spot);
    spot.statements.push(statement);
  }
  return [...spots.values()];
}

function isComparison({ side }: Spot): boolean {
  return side === undefined || side === 'both';
}

function numbersOf({ numbers }: Page, { statements }: Spot): readonly number[] {
  return statements.flatMap(({ key }) => numbers.get(key) ?? []);
}

function drawSpot(page: Page, spot: Spot, linked: Set<number>): Content {
  const numbers = numbersOf(page, spot);
  if (numbers.length === 0) return dot(page, spot);
  return numberRows(page, numbers, spot.x, spot.y, linked, 'view-sensation');
}

/** Comparisons of the sides stand in the middle, above what they compare, and below each other. */
function comparisons(page: Page, spots: readonly Spot[], linked: Set<number>): Content {
  let free = 0;
  return [...spots]
    .sort((a, b) => a.y - b.y)
    .map((spot) => {
      const numbers = numbersOf(page, spot);
      const y = Math.max(spot.y - 22, free);
      if (numbers.length > 0) free = y + rowsOf(numbers) * STEP;
      return numberRows(page, numbers, spot.x, y, linked, 'view-sensation');
    });
}

function dot(page: Page, { statements, x, y }: Spot): Content {
  const [first] = statements;
  const mark = markOfSpot(statements, page);
  return element(
    'g',
    {},
    element('title', {}, `${first && page.teller.subject(first)}: ${page.labels.marks[mark]}`),
    element('ellipse', { cx: x, cy: y, rx: 7, ry: 7, class: `mark ${mark}` }),
    element('text', { x, y: y + 3, class: 'symbol' }, markSymbols[mark]),
  );
}

/** Of a point where nothing deviates: what was left untested there is never covered by what was. */
function markOfSpot(statements: readonly Statement[], { catalogue }: Page): Mark {
  const said = statements.flatMap((statement) => sayingsOf(statement, catalogue));
  const normal = said.filter(({ polarity }) => polarity === 'denies').length;
  if (normal === 0) return 'not-examined';
  return normal < said.length ? 'partial' : 'normal';
}
