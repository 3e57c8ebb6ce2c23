import type { TableName } from './built-in.ts';
import type { Catalogue } from './catalogue.ts';

/** Name of a table in files and URLs: `testPoints` is `test-points`. */
export function kebab(table: string): string {
  return table.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

/** The tables by that name. */
export function tablesByName(catalogue: Catalogue): ReadonlyMap<string, TableName> {
  const tables = Object.keys(catalogue) as TableName[]; // a catalogue has these properties alone
  return new Map(tables.map((table) => [kebab(table), table]));
}

/** The table that a text means, by its name or the URL of its code system; undefined for other systems. */
export function tableOf(
  source: string,
  base: string,
  tables: ReadonlyMap<string, TableName>,
): TableName | undefined {
  const prefix = `${base}/CodeSystem/`;
  return tables.get(source.startsWith(prefix) ? source.slice(prefix.length) : source);
}
