import { subjectOf } from '../kinds/registries/meanings.ts';
import { tell } from '../kinds/registries/pages.ts';
import type { Statement } from '../model/statement.ts';
import type { Page } from '../report/page.ts';

/** A figure that was measured and is not a bound. */
export interface Figure {
  /** Code of the measure. */
  readonly measure: string;
  /** Measure, place and conditions in words. */
  readonly name: string;
  readonly value: string;
  readonly unit: string;
}

/** The figure of a statement that measures; undefined for any other. */
export function figureOf(statement: Statement, page: Page): Figure | undefined {
  const { table, code } = subjectOf(statement);
  if (table !== 'measures') return undefined;
  const told = tell(statement, page);
  if (!('table' in told) || told.figure === undefined) return undefined;
  const { value, unit } = told.figure;
  return { measure: code, name: told.name, value, unit };
}
