import type { Side } from '../../model/primitive.ts';
import type { Statement } from '../../model/statement.ts';
import { type Content, joined } from '../html.ts';
import { type Page, separated } from '../page.ts';

/** A row of a table with one column for each side: what it is about, and the answers by side. */
export interface SideRow {
  readonly name: string;
  readonly right: Content[];
  readonly left: Content[];
  readonly other: Content[];
}

/**
 * Rows by name, in the order in which the names first stand in the exam. A side that has no column,
 * such as the midline, is named with the answer.
 */
export function sideRows<S extends Statement>(
  { teller }: Page,
  statements: readonly S[],
  name: (statement: S) => string,
  side: (statement: S) => Side | undefined,
  answer: (statement: S) => Content,
): SideRow[] {
  const rows = new Map<string, SideRow>();
  for (const statement of statements) {
    const key = name(statement);
    const row = rows.get(key) ?? { name: key, right: [], left: [], other: [] };
    rows.set(key, row);
    const said = answer(statement);
    const where = side(statement);
    if (where === 'both') {
      row.right.push(said);
      row.left.push(said);
    } else if (where === 'right' || where === 'left') row[where].push(said);
    else row.other.push(where === undefined ? said : joined(`${teller.side(where)}: `, said));
  }
  return [...rows.values()];
}

/** Cells of a row; a side that nothing was said about says so by a dash. */
export function sideCells(row: SideRow): Content[] {
  return [row.name, ...[row.right, row.left, row.other].map((said) => separated(said) ?? '–')];
}
