import type { Comparison } from '../../checks/compare/comparison.ts';
import { subjectTables } from '../../kinds/registries/subject-tables.ts';
import { type Content, element, section, table } from '../html.ts';
import { type Page, separated } from '../page.ts';

/** What changed is worth a row; what was only stated alike in both is not. */
const shown: ReadonlySet<Comparison['change']> = new Set([
  'new',
  'gone',
  'changed',
  'unchanged',
  'not-comparable',
]);

export function changePart(page: Page): Content {
  const { labels, checks, prior } = page;
  if (prior === undefined) {
    return section('change', labels.change, element('p', {}, labels.noPrior));
  }
  const rows = checks.comparisons
    .filter(({ change }) => shown.has(change))
    .map((one): Content[] => [
      subject(page, one),
      labels.changes[one.change] ?? one.change,
      figures(page, one),
      one.reason,
    ]);
  const { what, change, detail, reason } = labels.columns;
  return section(
    'change',
    labels.change,
    element('p', {}, `${prior.performed.start} → ${page.exam.performed.start}`),
    table({ caption: labels.change, head: [what, change, detail, reason], rows }),
  );
}

function subject({ teller }: Page, one: Comparison): string {
  const name = teller.display(subjectTables[one.kind], one.code);
  if (one.region !== undefined && one.region !== one.code) {
    return `${name} – ${teller.place(one.region, one.side)}`;
  }
  return one.side === undefined ? name : `${name}, ${teller.side(one.side)}`;
}

function figures({ labels }: Page, { figures: change, values, days }: Comparison): Content {
  return separated([
    values && `${values.before} → ${values.now}`,
    change &&
      `${change.before.value} ${change.before.unit} → ${change.now.value} ${change.now.unit} (${change.delta} ${change.unit}${
        change.percent === undefined ? '' : `, ${change.percent} %`
      })`,
    days === undefined ? undefined : `${days} ${labels.days}`,
  ]);
}
