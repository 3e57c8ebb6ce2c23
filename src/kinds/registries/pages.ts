import type { Statement, StatementKind } from '../../model/statement.ts';
import type { Page } from '../../report/page.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { KindPage, Mark, ToldInList, ToldInTable } from '../facets/page.ts';
import { findingPage } from '../finding/page.ts';
import { functionTestPage } from '../function-test/page.ts';
import { imagePage } from '../image/page.ts';
import { measurementPage } from '../measurement/page.ts';
import { movementPage } from '../movement/page.ts';
import { notePage } from '../note/page.ts';
import { regionStatePage } from '../region-state/page.ts';
import { scaleScorePage } from '../scale-score/page.ts';
import { sensationPage } from '../sensation/page.ts';
import { comparisonPage } from '../sensation-comparison/page.ts';
import { symptomPage } from '../symptom/page.ts';

/** In the order in which rows of one table stand. */
const pages: { readonly [K in StatementKind]: KindPage<Extract<Statement, { kind: K }>> } = {
  finding: findingPage,
  'region-state': regionStatePage,
  sensation: sensationPage,
  'sensation-comparison': comparisonPage,
  movement: movementPage,
  'function-test': functionTestPage,
  measurement: measurementPage,
  'scale-score': scaleScorePage,
  symptom: symptomPage,
  note: notePage,
  image: imagePage,
};

/** The record files each page under the kind it takes, which lets it stand for that of any kind. */
function pageOf({ kind }: Statement): KindPage<Statement> {
  return pages[kind];
}

const order: ReadonlyMap<string, number> = new Map(
  Object.keys(pages).map((kind, at) => [kind, at]),
);

/** Every statement of the page, kind by kind, and within a kind in the order of the exam. */
export function tellAll(
  page: Page,
): readonly { readonly statement: Statement; readonly told: ToldInList | ToldInTable }[] {
  const rank = ({ kind }: Statement): number => order.get(kind) ?? 0;
  return [...page.exam.statements]
    .sort((a, b) => rank(a) - rank(b))
    .map((statement) => ({ statement, told: pageOf(statement).tell(statement, page) }));
}

/** How one statement stands on the page. */
export function tellOne(statement: Statement, page: Page): ToldInList | ToldInTable {
  return pageOf(statement).tell(statement, page);
}

/** What the map shows at the place of a statement because of it. */
export function markOf(statement: Statement, catalogue: Catalogue): Mark {
  return pageOf(statement).mark?.(statement, catalogue) ?? 'said';
}
