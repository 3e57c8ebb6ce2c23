import type { Comparison } from '../../checks/compare/comparison.ts';
import { listIn } from '../../checks/exam-index.ts';
import { markOf, tell } from '../../kinds/registries/pages.ts';
import { subjectTables } from '../../kinds/registries/subject-tables.ts';
import type { Statement } from '../../model/statement.ts';
import { time } from '../dates.ts';
import { type Content, element, list, section, table } from '../html.ts';
import { inEnglish, type Page, separated } from '../page.ts';

/** Changes in the order in which they matter. */
const order: readonly Comparison['change'][] = [
  'changed',
  'new',
  'gone',
  'not-comparable',
  'unchanged',
];

/**
 * What changed has a row, what matters most first. What did not change, or cannot be compared, stands in
 * lines below: as rows it would hide the few that matter.
 */
export function changePart(page: Page): Content {
  const { labels, checks, prior, exam } = page;
  if (prior === undefined) {
    return element('p', { class: 'no-prior' }, labels.noPrior);
  }
  const statements = new Map(
    [...prior.statements, ...exam.statements].map((one) => [one.key, one]),
  );
  const told = checks.comparisons
    .filter(({ change }) => order.includes(change))
    .sort((a, b) => weight(a) - weight(b));
  const rows = told
    .filter((one) => hasRow(one, page, statements))
    .map((one): Content[] => [
      subject(page, one, statements),
      emphasis(one, labels.changes[one.change] ?? one.change),
      separated([valueText(one), one.figures && changeFigures(page, one)]),
      one.reason && inEnglish(one.reason),
    ]);
  const rest = told.filter((one) => !hasRow(one, page, statements));
  const { what, change, detail, reason } = labels.columns;
  return section(
    'change',
    labels.change,
    element(
      'p',
      {},
      time(prior.performed.start, labels.dates),
      ' → ',
      time(exam.performed.start, labels.dates),
    ),
    rows.length === 0 && element('p', {}, labels.noChange),
    table({ caption: labels.change, head: [what, change, detail, reason], rows }),
    list([unchangedText(page, rest, statements), ...incomparable(page, rest, statements)]),
  );
}

/** Changes, differences within what the instrument can tell, and signs of which the prior exam says nothing. */
function hasRow(
  { change, figures, now, before }: Comparison,
  { catalogue }: Page,
  statements: ReadonlyMap<string, Statement>,
): boolean {
  if (change === 'unchanged') return figures?.withinResolution === true;
  if (change !== 'not-comparable') return true;
  const statement = statements.get(now ?? '');
  return before === undefined && statement !== undefined && markOf(statement, catalogue) === 'sign';
}

/** `Unchanged by measurement: Width of the palpebral fissure, right: 29.5 mm, left: 29.5 mm` */
function unchangedText(
  page: Page,
  comparisons: readonly Comparison[],
  statements: ReadonlyMap<string, Statement>,
): Content {
  const figures = new Map<string, string[]>();
  for (const one of comparisons) {
    const statement = statements.get(one.now ?? '');
    if (one.change !== 'unchanged' || one.figures === undefined || statement === undefined)
      continue;
    const told = tell(statement, page);
    const isSided = 'table' in told && told.side !== undefined;
    const name = 'table' in told ? told.name : subject(page, one, statements);
    const value = page.teller.quantity(one.figures.now);
    listIn(figures, name).push(
      isSided && told.side ? `${page.teller.side(told.side)}: ${value}` : value,
    );
  }
  if (figures.size === 0) return undefined;
  const texts = [...figures].map(([name, values]) => `${name}, ${values.join(', ')}`);
  return `${page.labels.changes.unchanged}: ${texts.join('; ')}`;
}

/** A line each, so that no name of a sign stands where it could be read as there. */
function incomparable(
  page: Page,
  comparisons: readonly Comparison[],
  statements: ReadonlyMap<string, Statement>,
): Content[] {
  return comparisons
    .filter(({ change }) => change === 'not-comparable')
    .map((one) => [
      `${page.labels.changes['not-comparable']}: ${subject(page, one, statements)}`,
      one.reason && [' (', inEnglish(one.reason), ')'],
    ]);
}

/** Rank of a change: by its kind, and of one kind those of a lesion that is followed come first. */
function weight({ change, tracking, figures }: Comparison): number {
  const followed = tracking === undefined ? 1 : 0;
  const certain = figures?.withinResolution === true ? 1 : 0;
  return order.indexOf(change) * 4 + certain * 2 + followed;
}

function emphasis({ change }: Comparison, text: string): Content {
  return change === 'changed' || change === 'new' ? element('strong', {}, text) : text;
}

/** In the words of its own row or line, so that a pupil says its light and a node its axis. */
function subject(page: Page, one: Comparison, statements: ReadonlyMap<string, Statement>): string {
  const { teller } = page;
  const statement = statements.get(one.now ?? one.before ?? '');
  const told = statement && tell(statement, page);
  if (told !== undefined && 'table' in told) {
    const modality = one.modality && teller.display('modalities', one.modality);
    const side = told.side && teller.side(told.side);
    return [told.name, modality, side].filter((part) => part !== undefined).join(', ');
  }
  const name = teller.display(subjectTables[one.kind], one.code);
  if (one.region !== undefined && one.region !== one.code) {
    return `${name} – ${teller.place(one.region, one.side)}`;
  }
  return one.side === undefined ? name : `${name}, ${teller.side(one.side)}`;
}

function valueText({ values }: Comparison): Content {
  return values && `${values.before} → ${values.now}`;
}

/** Before, now, and the difference with the days between: `4.0 mm before, +2.0 mm in 371 days`. */
export function changeFigures({ labels, teller }: Page, { figures, days }: Comparison): Content {
  if (figures === undefined) return undefined;
  const { before, now, delta, unit, percent, withinResolution, resolution } = figures;
  const signed =
    delta.startsWith('-') || Number(delta) === 0 ? delta : `+${delta.replace('+', '')}`;
  return separated(
    [
      `${before.value} ${before.unit} → ${now.value} ${now.unit}`,
      `${signed} ${unit}${percent === undefined ? '' : ` = ${percent} %`}`,
      days === undefined ? undefined : `${days} ${labels.days}`,
      resolution && `${labels.readsTo} ${teller.quantity(resolution)}`,
      withinResolution && labels.withinResolution,
    ],
    ', ',
  );
}
