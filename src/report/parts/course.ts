import { priorIssues } from '../../checks/compare/usable-prior.ts';
import { listIn } from '../../checks/exam-index.ts';
import { isUnconfirmed } from '../../kinds/facets/base.ts';
import { tell } from '../../kinds/registries/pages.ts';
import type { Exam } from '../../model/exam.ts';
import { dayText } from '../dates.ts';
import { type Content, element, type Html, section, table } from '../html.ts';
import type { Page } from '../page.ts';

/** A figure of one exam. */
interface Point {
  readonly day: string;
  readonly value: string;
}

/**
 * Figures over three exams or more, oldest first, with a small chart that repeats them. A figure is
 * followed by measure, place, side, conditions and unit; where an exam has two such, none is.
 */
export function coursePart(page: Page): Content {
  const { exam, prior, earlier, labels } = page;
  if (prior === undefined || earlier.length === 0) return undefined;
  const exams = [exam, prior, ...earlier]
    .filter((one) => one === exam || priorIssues(exam, one, page.samePatient).length === 0)
    .sort((a, b) => (a.performed.start < b.performed.start ? -1 : 1));
  const courses = new Map<string, Point[]>();
  for (const one of exams) {
    for (const [name, value] of figuresOf(one, page)) {
      listIn(courses, name).push({ day: one.performed.start, value });
    }
  }
  const rows = [...courses]
    .filter(([, points]) => points.length > 2)
    .map(([name, points]): Content[] => [
      name,
      points.map(({ day, value }) => [
        element('div', {}, `${dayText(day, labels.dates)}: ${value}`),
      ]),
      chart(points),
    ]);
  const { what, detail } = labels.columns;
  return section(
    'course',
    labels.course,
    table({ caption: labels.course, head: [what, detail, labels.course], rows }),
  );
}

/** Figures of an exam by name, side and unit, those alone that stand once. */
function figuresOf(exam: Exam, page: Page): ReadonlyMap<string, string> {
  const figures = new Map<string, string | undefined>();
  for (const statement of exam.statements) {
    const told = isUnconfirmed(statement) ? undefined : tell(statement, { ...page, exam });
    if (told === undefined || !('table' in told) || told.figure === undefined) continue;
    const side = told.side === undefined ? '' : `, ${page.teller.side(told.side)}`;
    const name = `${told.name}${side}, ${told.figure.unit}`;
    figures.set(name, figures.has(name) ? undefined : told.figure.value);
  }
  return new Map(
    [...figures].flatMap(([name, value]) => (value === undefined ? [] : [[name, value]])),
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
