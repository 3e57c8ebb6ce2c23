import { listIn } from '../../checks/exam-index.ts';
import type { Mark } from '../../kinds/facets/page.ts';
import { formOf } from '../../kinds/registries/forms.ts';
import { tell } from '../../kinds/registries/pages.ts';
import { type Content, element, type Html, section, table } from '../html.ts';
import type { Page } from '../page.ts';
import { placesText } from '../places.ts';
import type { ToldPlace } from '../teller.ts';
import { deep, neck } from './deep-views.ts';
import { drawView, type Shown } from './draw-view.ts';
import { front, profile } from './face-views.ts';
import { canStandIn, type MarkOf, markSymbols, marksOf, placeNumbers } from './marks.ts';
import { ear, eye, nose } from './organ-views.ts';
import { isSensation, sensationView } from './sensation.ts';
import { type Column, isDrawn } from './views.ts';

/**
 * The drawing with what is abnormal by number, what has no place in it by name, the legend, and a
 * table of every region, which says the same to those who cannot see it.
 */
export function drawingPart(page: Page): Content {
  const { exam, prior, catalogue, labels, numbers } = page;
  const mark = marksOf(exam, catalogue);
  const onMap = new Set(
    exam.statements.flatMap((one) =>
      isSensation(one, catalogue) ? [numbers.get(one.key) ?? 0] : [],
    ),
  );
  const shown: Shown = {
    mark,
    prior: prior && marksOf(prior, catalogue),
    numbers: placeNumbers(exam, catalogue, numbers, onMap),
    sizes: sizesOf(page),
    linked: new Set(),
  };
  return section(
    'map',
    labels.map,
    element(
      'div',
      { class: 'views' },
      drawView(page, profile, shown, 'right'),
      drawView(page, front, shown, undefined),
      drawView(page, profile, shown, 'left'),
      drawView(page, deep, shown, 'right'),
      stack(
        'middle',
        drawView(page, neck, shown, undefined),
        drawView(page, nose, shown, undefined),
      ),
      drawView(page, deep, shown, 'left'),
      stack('of-right', drawView(page, eye, shown, 'right'), drawView(page, ear, shown, 'right')),
      sensationView(page, shown.linked) ?? element('div', { class: 'blank' }),
      stack('of-left', drawView(page, eye, shown, 'left'), drawView(page, ear, shown, 'left')),
      element(
        'div',
        { class: 'beside' },
        wholes(page, shown),
        element('p', {}, labels.mapNote),
        legend(page),
      ),
    ),
    element('details', {}, element('summary', {}, labels.everyRegion), regionTable(page, mark)),
  );
}

/** The two greatest figures in millimetres of what was measured of each sign, as drawn to scale. */
function sizesOf(page: Page): ReadonlyMap<number, readonly [string, string]> {
  const figures = new Map<number, string[]>();
  for (const statement of page.exam.statements) {
    for (const { key } of formOf(statement).about?.(statement) ?? []) {
      const number = page.numbers.get(key);
      const told = tell(statement, page);
      if (number === undefined || !('table' in told) || told.figure?.unit !== 'mm') continue;
      listIn(figures, number).push(told.figure.value);
    }
  }
  return new Map(
    [...figures].map(([number, values]): [number, readonly [string, string]] => {
      const [long = '0', across = long] = [...new Set(values)].sort(
        (a, b) => Number(b) - Number(a),
      );
      return [number, [long, across]];
    }),
  );
}

/** Views one below the other in one column. */
function stack(place: 'of-right' | 'middle' | 'of-left', ...inColumn: readonly Content[]): Html {
  return element('div', { class: `stack ${place}` }, inColumn);
}

const sides: readonly Column[] = ['right', 'left', 'middle'];

/** What no view shows: parts as a whole, functions, and places that a clinic added. */
function wholes(page: Page, { mark, numbers, linked }: Shown): Content {
  const { catalogue, labels, teller } = page;
  const numbered: Html[] = [];
  const places = new Map<Mark, ToldPlace[]>();
  for (const region of catalogue.regions.keys()) {
    for (const column of sides) {
      if (isDrawn(region, column)) continue;
      const side = column === 'middle' ? undefined : column;
      const here = numbers.at(region, column);
      const found = mark(region, column);
      if (here.length > 0) numbered.push(chip(teller.place(region, side), here));
      else if (found !== 'silent') listIn(places, found).push({ region, side });
    }
  }
  if (numbers.elsewhere.length > 0) numbered.push(chip(labels.noPlace, numbers.elsewhere));
  if (numbered.length + places.size === 0) return undefined;
  const groups = [...places].map(([found, there]) =>
    element('li', {}, key(found), ` ${labels.marks[found]}${placesText(there, page)}`),
  );
  return [element('h3', {}, labels.wholes), element('ul', { class: 'wholes' }, numbered, groups)];

  function chip(text: string, here: readonly number[]): Html {
    const links = here.map((number) => {
      const id = linked.has(number) ? undefined : `mark-${number}`;
      linked.add(number);
      return element('a', { class: 'number', href: `#sign-${number}`, id }, String(number));
    });
    return element('li', {}, links, ` ${text}`);
  }
}

function key(mark: Mark): Html {
  return element('span', { class: `key ${mark}`, 'aria-hidden': 'true' }, markSymbols[mark]);
}

function legend({ labels, prior }: Page): Html {
  const marks: readonly Mark[] = ['normal', 'partial', 'not-examined', 'said', 'silent'];
  const item = (mark: string, symbol: string, text: string): Html =>
    element(
      'li',
      {},
      element('span', { class: `key ${mark}`, 'aria-hidden': 'true' }, symbol),
      ` ${text}`,
    );
  return element(
    'ul',
    { class: 'legend', 'aria-label': labels.legend },
    item('numbered', '1', labels.marks.sign),
    marks.map((mark) => item(mark, mark === 'silent' ? '' : markSymbols[mark], labels.marks[mark])),
    prior && item('before', '', labels.priorMark),
    element('li', {}, labels.scaleNote),
  );
}

function regionTable({ catalogue, labels, teller }: Page, mark: MarkOf): Content {
  const rows = [...catalogue.regions.values()]
    .filter((region) => !region.group)
    .map(({ code }): Content[] => {
      const cell = (column: Column): Content => {
        const found = mark(code, column);
        if (found === 'silent' && !canStandIn(code, column, catalogue)) return '';
        return [key(found), ` ${labels.marks[found]}`];
      };
      return [teller.display('regions', code), cell('right'), cell('left'), cell('middle')];
    });
  const { where, right, left, other } = labels.columns;
  return table({ caption: labels.map, head: [where, right, left, other], rows });
}
