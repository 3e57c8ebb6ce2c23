import { type Issue, issue, type Outcome } from '../issue.ts';
import { builtInTables, type TableName, type TableRows } from './built-in.ts';

/** One table, looked up by code. */
export type Index<Row> = ReadonlyMap<string, Row>;

/** All tables the library works with: the built-in ones and what an adopter added. */
export type Catalogue = { readonly [Name in TableName]: Index<TableRows[Name]> };

/**
 * Rows of an adopter. `system` is the adopter's own code system, so that a code of ours never
 * changes its meaning; a row may not take a code that the table already holds.
 */
export type CatalogueAdditions = { readonly system: string } & {
  readonly [Name in TableName]?: readonly TableRows[Name][];
};

const tableNames: readonly TableName[] = Object.keys(builtInTables) as TableName[]; // keys of a literal

/** The tables as published with the library. */
export const builtInCatalogue: Catalogue = /*@__PURE__*/ index(builtInTables);

/**
 * The built-in tables with rows of an adopter. Issues: a code taken twice, a reference to a row
 * that does not exist. No value when anything is wrong.
 */
export function createCatalogue(additions: CatalogueAdditions): Outcome<Catalogue> {
  const issues: Issue[] = [];
  const merged = Object.fromEntries(
    tableNames.map((name) => [name, new Map<string, object>(builtInCatalogue[name])]),
  );
  for (const name of tableNames) {
    const rows: readonly { readonly code: string }[] = additions[name] ?? [];
    rows.forEach((row, at) => {
      const table = merged[name];
      if (table?.has(row.code)) {
        issues.push(issue('duplicate-key', [name, at, 'code'], 'this code is taken already'));
      }
      table?.set(row.code, { ...row, system: additions.system });
    });
  }
  const catalogue = merged as unknown as Catalogue; // built key by key from the same table names
  issues.push(...danglingReferences(catalogue, additions));
  return issues.length > 0 ? { issues } : { value: catalogue, issues };
}

function danglingReferences(catalogue: Catalogue, additions: CatalogueAdditions): Issue[] {
  const issues: Issue[] = [];
  const need = (table: TableName, code: string | undefined, path: (string | number)[]): void => {
    if (code !== undefined && !catalogue[table].has(code)) {
      issues.push(issue('unresolved-key', path, `no such row in the table ${table}`));
    }
  };
  additions.regions?.forEach((row, at) => {
    need('regions', row.parent, ['regions', at, 'parent']);
    need('sections', row.section, ['regions', at, 'section']);
    row.methods.forEach((code, m) => {
      need('methods', code, ['regions', at, 'methods', m]);
    });
  });
  additions.findings?.forEach((row, at) => {
    row.regions.forEach((code, r) => {
      need('regions', code, ['findings', at, 'regions', r]);
    });
  });
  additions.testPoints?.forEach((row, at) => {
    need('regions', row.region, ['testPoints', at, 'region']);
    need('sections', row.section, ['testPoints', at, 'section']);
  });
  additions.protocols?.forEach((row, at) => {
    row.regions.forEach((entry, r) => {
      need('regions', entry.region, ['protocols', at, 'regions', r, 'region']);
    });
  });
  return issues;
}

function index(tables: { readonly [Name in TableName]: readonly TableRows[Name][] }): Catalogue {
  const entries = tableNames.map((name) => {
    const rows: readonly { readonly code: string }[] = tables[name];
    return [name, new Map(rows.map((row) => [row.code, row]))];
  });
  return Object.fromEntries(entries) as Catalogue; // one Map a table name
}
