import type { Statement, StatementKind } from '../../model/statement.ts';
import type { Page } from '../../report/page.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { isUnconfirmed } from '../facets/base.ts';
import type { KindPage, Mark, Told } from '../facets/page.ts';
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

/** Statements kind by kind, and within a kind in the order of the exam. */
export function inPageOrder(statements: readonly Statement[]): readonly Statement[] {
  const rank = ({ kind }: Statement): number => order.get(kind) ?? 0;
  return [...statements].sort((a, b) => rank(a) - rank(b));
}

/** How a statement is told on the page. */
export function tell(statement: Statement, page: Page): Told {
  return pageOf(statement).tell(statement, page);
}

/**
 * What the drawing shows at the place of a statement because of it. What was seen at another time and
 * not looked at again says nothing of how the place is.
 */
export function markOf(statement: Statement, catalogue: Catalogue): Mark {
  if (isUnconfirmed(statement)) return 'said';
  return pageOf(statement).mark?.(statement, catalogue) ?? 'said';
}
