import { priorIssues } from '../../checks/compare/usable-prior.ts';
import { listIn } from '../../checks/exam-index.ts';
import { isUnconfirmed } from '../../kinds/facets/base.ts';
import { subjectOf } from '../../kinds/registries/meanings.ts';
import { tell } from '../../kinds/registries/pages.ts';
import type { Exam } from '../../model/exam.ts';
import type { Quantity } from '../../model/primitive.ts';
import { dayText } from '../dates.ts';
import { type Content, element, type Html, section, table } from '../html.ts';
import type { Page } from '../page.ts';

/** A figure of one exam. */
interface Point {
  readonly day: string;
  readonly value: string;
  readonly unit: string;
}

/**
 * Figures over three exams or more, oldest first, with a small chart that repeats them. A figure is
 * followed by measure, place, side, conditions and unit; where an exam has two such, none is. Figures that
 * are alike in every exam stand together below.
 */
export function coursePart(page: Page): Content {
  const { exam, prior, earlier, labels, teller } = page;
  if (prior === undefined || earlier.length === 0) return undefined;
  const exams = [exam, prior, ...earlier]
    .filter((one) => one === exam || priorIssues(exam, one, page.samePatient).length === 0)
    .sort((a, b) => (a.performed.start < b.performed.start ? -1 : 1));
  const courses = new Map<string, Point[]>();
  for (const one of exams) {
    for (const [name, figure] of figuresOf(one, page)) {
      listIn(courses, name).push({ day: one.performed.start, ...figure });
    }
  }
  const followed = [...courses].filter(([, points]) => points.length > 2);
  const isSteady = (points: readonly Point[]): boolean =>
    points.every(({ value }) => Number(value) === Number(points[0]?.value));
  const rows = followed
    .filter(([, points]) => !isSteady(points))
    .map(([name, points]): Content[] => [
      name,
      points.map(({ day, value, unit }) => [
        element(
          'span',
          { class: 'visit' },
          `${dayText(day, labels.dates)}: ${teller.quantity({ value, unit })}`,
        ),
        ' ',
      ]),
      chart(points),
    ]);
  const steady = followed
    .filter(([, points]) => isSteady(points))
    .map(([name, [first]]) => `${name}: ${first && teller.quantity(first)}`);
  const { what, detail } = labels.columns;
  return section(
    'course',
    labels.course,
    table({ caption: labels.course, head: [what, detail, labels.course], rows }),
    steady.length > 0 && element('p', {}, `${labels.steady}: ${steady.join('; ')}`),
  );
}

/** Figures of an exam by name and side, those alone that stand once; of another unit, under another name. */
function figuresOf(exam: Exam, page: Page): ReadonlyMap<string, Quantity> {
  const figures = new Map<string, Quantity | undefined>();
  for (const statement of exam.statements) {
    const told = isUnconfirmed(statement) ? undefined : tell(statement, { ...page, exam });
    if (told === undefined || !('table' in told) || told.figure === undefined) continue;
    const { value, unit } = told.figure;
    const side = told.side === undefined ? '' : `, ${page.teller.side(told.side)}`;
    const usual = page.catalogue.measures.get(subjectOf(statement).code)?.unit === unit;
    const name = `${told.name}${side}${usual ? '' : `, ${unit}`}`;
    figures.set(name, figures.has(name) ? undefined : { value, unit });
  }
  return new Map(
    [...figures].flatMap(([name, figure]) => (figure === undefined ? [] : [[name, figure]])),
  );
}

const WIDTH = 160;
const HEIGHT = 40;
const EDGE = 6;

/** Points at the distance of their days, joined by a line; the axis begins at nought. */
function chart(points: readonly Point[]): Html {
  const days = points.map(({ day }) => Date.parse(day.slice(0, 10)) || 0);
  const values = points.map(({ value }) => Number(value));
  const least = values.reduce((a, b) => Math.min(a, b), 0);
  const most = values.reduce((a, b) => Math.max(a, b), 0);
  const across = (at: number): number =>
    EDGE +
    ((WIDTH - 2 * EDGE) * ((days[at] ?? 0) - (days[0] ?? 0))) /
      Math.max(1, (days.at(-1) ?? 0) - (days[0] ?? 0));
  const up = (value: number): number =>
    HEIGHT - EDGE - ((HEIGHT - 2 * EDGE) * (value - least)) / (most - least || 1);
  const places = values.map((value, at) => [across(at).toFixed(1), up(value).toFixed(1)] as const);
  return element(
    'svg',
    { viewBox: `0 0 ${WIDTH} ${HEIGHT}`, class: 'course', 'aria-hidden': 'true' },
    element('path', { d: `M${EDGE} ${up(0).toFixed(1)}H${WIDTH - EDGE}`, class: 'line pale' }),
    element('path', {
      d: `M${places.map(([x, y]) => `${x} ${y}`).join('L')}`,
      class: 'line contour',
    }),
    places.map(([cx, cy]) => element('circle', { cx, cy, r: 2.5, class: 'point' })),
  );
}
