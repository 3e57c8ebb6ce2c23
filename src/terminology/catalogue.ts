import { append } from '../data/append.ts';
import { checkAgainstSchema } from '../data/schema-check.ts';
import { type BudgetOption, within } from '../issues/budget.ts';
import { failure, hasErrors, type Issue, issue, type Outcome, success } from '../issues/issue.ts';
import { cutIssues, endedIssue } from '../issues/issue-list.ts';
import { firstNearest } from '../issues/nearest.ts';
import { builtInTables, type TableName, type TableRows } from './built-in.ts';
import { additionsValidator } from './compiled/additions.js';
import { type Reference, references } from './references.ts';
import { standardSystem } from './system-names.ts';
import type { Concept } from './types.ts';

/** One table, looked up by code. */
export type Index<Row> = ReadonlyMap<string, Row>;

/** All tables the library works with: the built-in ones and what an adopter added. */
export type Catalogue = { readonly [Name in TableName]: Index<TableRows[Name]> };

/**
 * Rows of an adopter. `system` is the adopter's own code system, so that a code of ours never
 * changes its meaning; a row may not take a code that the table already holds.
 */
export type CatalogueAdditions = { readonly system: string } & {
  readonly [Name in TableName]?: readonly (TableRows[Name] & Background)[];
};

/** What rows of /terminology say besides, and no export needs. */
type Background = Partial<Pick<Concept, 'source' | 'evidence' | 'definition'>>;

const tableNames: readonly TableName[] = Object.keys(builtInTables) as TableName[]; // keys of a literal

/** The tables as published with the library. */
export const builtInCatalogue: Catalogue = /*@__PURE__*/ index(builtInTables);

/** Form of a code, as exams take it. */
const codeForm = /^[a-z0-9][a-z0-9.-]{0,99}$/;

/**
 * Adds your own rows to the built-in tables.
 *
 * @param additions Rows by table, and the URI of the code system that their codes belong to.
 * @param options `budget`: what the call may take.
 * @returns A new catalogue. It fails where a table does not exist, a code has another form than
 *   exams take or is taken already, a reference leads to no row, or regions form a circle.
 * @example
 * const system = 'https://vineyard.example/codes';
 * const findings = [{ code: 'sun-mark', display: 'Sun mark', regions: ['temple'] }];
 * const ours = createCatalogue({ system, findings });
 */
export function createCatalogue(
  additions: CatalogueAdditions,
  { budget }: { readonly budget?: BudgetOption } = {},
): Outcome<Catalogue> {
  return within(
    'catalogue',
    budget,
    () => merged(additions),
    (why) => failure([endedIssue(why)]),
  );
}

function merged(additions: CatalogueAdditions): Outcome<Catalogue> {
  const misshapen = checkAgainstSchema(additions, {
    validator: additionsValidator,
    forms: new Map(),
    includeValues: false,
  });
  if (hasErrors(misshapen)) return failure(cutIssues(misshapen));
  const issues: Issue[] = headIssues(additions);
  const tables = Object.fromEntries(
    tableNames.map((name) => [name, new Map<string, object>(builtInCatalogue[name])]),
  );
  for (const name of tableNames) {
    const table = tables[name];
    rowsOf(additions, name).forEach((row, at) => {
      if (!codeForm.test(row.code)) {
        issues.push(issue('invalid-value', [name, at, 'code'], { reason: 'catalogue-code' }));
      }
      if (table?.has(row.code)) {
        issues.push(issue('duplicate-key', [name, at, 'code'], { reason: 'catalogue-code' }));
      } else {
        table?.set(row.code, { ...row, system: additions.system });
      }
    });
  }
  const catalogue = tables as unknown as Catalogue; // built key by key from the same table names
  append(issues, referenceIssues(catalogue, additions));
  return issues.length > 0 ? failure(cutIssues(issues)) : success(catalogue, issues);
}

function headIssues(additions: CatalogueAdditions): Issue[] {
  const issues: Issue[] = [];
  // @see https://www.rfc-editor.org/rfc/rfc3986 section 3.1
  if (!/^[a-z][a-z0-9+.-]*:\S+$/.test(additions.system)) {
    issues.push(issue('invalid-value', ['system'], { reason: 'absolute-uri' }));
  } else if (standardSystem(additions.system) !== undefined) {
    issues.push(issue('wrong-system', ['system'], { reason: 'not-adopters' }));
  }
  return issues;
}

function referenceIssues(catalogue: Catalogue, additions: CatalogueAdditions): Issue[] {
  const issues: Issue[] = [];
  const near = firstNearest();
  const families = new Set([...catalogue.attributes.values()].map(({ family }) => family));
  for (const name of tableNames) {
    rowsOf(additions, name).forEach((row, at) => {
      for (const [table, code, ...path] of referencesOf(name, row)) {
        if (code === undefined || catalogue[table].has(code)) continue;
        const known = near(code, catalogue[table].keys());
        issues.push(
          issue('unresolved-key', [name, at, ...path], { reason: 'table', table, near: known }),
        );
      }
    });
  }
  additions.findings?.forEach(({ attributes }, at) => {
    if (attributes === undefined || families.has(attributes)) return;
    const path = ['findings', at, 'attributes'];
    issues.push(issue('unresolved-key', path, { reason: 'attribute-family' }));
  });
  const isInCircle = circleFinder(catalogue);
  additions.regions?.forEach(({ code }, at) => {
    if (!isInCircle(code)) return;
    const path = ['regions', at, 'parent'];
    issues.push(issue('contradiction', path, { reason: 'region-circle' }));
  });
  return issues;
}

function referencesOf<Name extends TableName>(name: Name, row: unknown): readonly Reference[] {
  // The row comes from the table of that name; TypeScript does not follow the pair.
  return references[name]?.(row as TableRows[Name]) ?? [];
}

/** Whether the regions above one lead into a circle; each region is walked over once. */
function circleFinder({ regions }: Catalogue): (region: string) => boolean {
  const known = new Map<string, boolean>();
  return (region) => {
    const way = new Set<string>();
    let at: string | undefined = region;
    while (at !== undefined && !known.has(at) && !way.has(at)) {
      way.add(at);
      at = regions.get(at)?.parent;
    }
    const leadsIn = at !== undefined && (known.get(at) ?? true);
    for (const walked of way) known.set(walked, leadsIn);
    return leadsIn;
  };
}

function rowsOf(
  additions: CatalogueAdditions,
  name: TableName,
): readonly { readonly code: string }[] {
  return additions[name] ?? [];
}

function index(tables: { readonly [Name in TableName]: readonly TableRows[Name][] }): Catalogue {
  const entries = tableNames.map((name) => {
    const rows: readonly { readonly code: string }[] = tables[name];
    return [name, new Map(rows.map((row) => [row.code, row]))];
  });
  return Object.fromEntries(entries) as Catalogue; // one Map a table name
}
