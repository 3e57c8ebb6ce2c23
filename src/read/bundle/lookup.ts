import { codeSystemUrl } from '../../fhir/names/code-systems.ts';
import type { TableName } from '../../terminology/built-in.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';

/** Which table of the catalogue a coding belongs to. */
export interface Lookup {
  /** Tables that hold the code under this system; more than one only among rows of an adopter. */
  tablesOf(system: string, code: string): readonly TableName[];
  /** System of a row: our own for the table, or that of the adopter who added it. */
  systemOf(table: TableName, code: string): string;
}

export function createLookup(catalogue: Catalogue, base: string): Lookup {
  const systems = new Map<string, Map<string, TableName[]>>();
  const names = Object.keys(catalogue) as TableName[]; // a catalogue has these properties alone
  const urls = new Map(names.map((table) => [table, codeSystemUrl(base, table)]));
  const systemOf = (table: TableName, code: string): string =>
    catalogue[table].get(code)?.system ?? urls.get(table) ?? '';
  for (const table of names) {
    for (const code of catalogue[table].keys()) {
      const system = systemOf(table, code);
      const codes = systems.get(system) ?? new Map<string, TableName[]>();
      systems.set(system, codes);
      codes.set(code, [...(codes.get(code) ?? []), table]);
    }
  }
  return { systemOf, tablesOf: (system, code) => systems.get(system)?.get(code) ?? none };
}

const none: readonly TableName[] = [];
