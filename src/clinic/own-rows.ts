import type { Issue } from '../issues/issue.ts';
import type { TableName } from '../terminology/built-in.ts';
import type { CatalogueAdditions } from '../terminology/catalogue.ts';
import { issue } from './issue.ts';

/** One row of a clinic's own, with its table and its place there. */
export interface OwnRow {
  readonly table: TableName;
  readonly code: string;
  readonly at: number;
}

/** The rows of a clinic's own, in the order of its file. */
export function ownRows({ system: _, ...tables }: CatalogueAdditions): readonly OwnRow[] {
  return Object.entries(tables).flatMap(
    ([table, rows]) =>
      (rows ?? []).map(({ code }, at) => ({ table: table as TableName, code, at })), // a key of the type
  );
}

/** All own rows are of one code system, in which a code means one thing. */
export function ownRowIssues(rows: CatalogueAdditions): readonly Issue[] {
  const first = new Map<string, TableName>();
  return ownRows(rows).flatMap(({ table, code, at }) => {
    const other = first.get(code) ?? table;
    first.set(code, other);
    if (other === table) return [];
    const path = [table, at, 'code'];
    return [issue('contradiction', path, { reason: 'code-twice', table: other })];
  });
}
