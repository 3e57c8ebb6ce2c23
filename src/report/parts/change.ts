import type { Comparison } from '../../checks/compare/comparison.ts';
import { tell } from '../../kinds/registries/pages.ts';
import { subjectTables } from '../../kinds/registries/subject-tables.ts';
import type { Statement } from '../../model/statement.ts';
import { time } from '../dates.ts';
import { type Content, element, section, table } from '../html.ts';
import { type Page, separated } from '../page.ts';

/** What changed is worth a row, what matters most first; what was only stated alike in both is not. */
const shown: readonly Comparison['change'][] = [
  'changed',
  'new',
  'gone',
  'not-comparable',
  'unchanged',
];

export function changePart(page: Page): Content {
  const { labels, checks, prior, exam } = page;
  if (prior === undefined) {
    return element('p', { class: 'no-prior' }, labels.noPrior);
  }
  const statements = new Map(
    [...prior.statements, ...exam.statements].map((one) => [one.key, one]),
  );
  const rows = checks.comparisons
    .filter(({ change }) => shown.includes(change))
    .sort((a, b) => weight(a) - weight(b))
    .map((one): Content[] => [
      subject(page, one, statements),
      emphasis(one, labels.changes[one.change] ?? one.change),
      separated([valueText(one), one.figures && changeFigures(page, one)]),
      one.reason,
    ]);
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
    table({ caption: labels.change, head: [what, change, detail, reason], rows }),
  );
}

/** Rank of a change: by its kind, and of one kind those of a lesion that is followed come first. */
function weight({ change, tracking, figures }: Comparison): number {
  const followed = tracking === undefined ? 1 : 0;
  const certain = figures?.withinResolution === true ? 1 : 0;
  return shown.indexOf(change) * 4 + certain * 2 + followed;
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
export function changeFigures({ labels }: Page, { figures, days }: Comparison): Content {
  if (figures === undefined) return undefined;
  const { before, now, delta, unit, percent, withinResolution } = figures;
  const signed =
    delta.startsWith('-') || Number(delta) === 0 ? delta : `+${delta.replace('+', '')}`;
  return separated(
    [
      `${before.value} ${before.unit} → ${now.value} ${now.unit}`,
      `${signed} ${unit}${percent === undefined ? '' : ` = ${percent} %`}`,
      days === undefined ? undefined : `${days} ${labels.days}`,
      withinResolution && labels.withinResolution,
    ],
    ', ',
  );
}
