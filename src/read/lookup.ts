import { codeSystemUrl } from '../fhir/code-systems.ts';
import type { TableName } from '../terminology/built-in.ts';
import type { Catalogue } from '../terminology/catalogue.ts';

/** Which table of the catalogue a coding belongs to. */
export interface Lookup {
  /** Tables that hold the code under this system; more than one only among rows of an adopter. */
  tablesOf(system: string, code: string): readonly TableName[];
  /** System of a row: our own for the table, or that of the adopter who added it. */
  systemOf(table: TableName, code: string): string;
}

export function createLookup(catalogue: Catalogue, base: string): Lookup {
  const tables = new Map<string, TableName[]>();
  const names = Object.keys(catalogue) as TableName[]; // a catalogue has these properties alone
  const urls = new Map(names.map((table) => [table, codeSystemUrl(base, table)]));
  const systemOf = (table: TableName, code: string): string =>
    catalogue[table].get(code)?.system ?? urls.get(table) ?? '';
  for (const table of names) {
    for (const code of catalogue[table].keys()) {
      const name = `${systemOf(table, code)}|${code}`;
      const list = tables.get(name);
      if (list === undefined) tables.set(name, [table]);
      else list.push(table);
    }
  }
  return { systemOf, tablesOf: (system, code) => tables.get(`${system}|${code}`) ?? [] };
}
