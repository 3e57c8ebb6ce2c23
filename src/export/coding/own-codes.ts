import { codeSystemUrl } from '../../fhir/names/code-systems.ts';
import type { TableName } from '../../terminology/built-in.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { exportedCodes } from '../../terminology/exported-codes.ts';

/** Tells whether a code of one of our systems exists; undefined for a system that is not ours. */
export function ownCodes(
  catalogue: Catalogue,
  base: string,
): (system: string, code: string) => boolean | undefined {
  const names = Object.keys(catalogue) as TableName[]; // a catalogue has these properties alone
  const tables = new Map(names.map((table) => [codeSystemUrl(base, table), table]));
  const codes = new Map<TableName, ReadonlySet<string>>();
  return (system, code) => {
    const table = tables.get(system);
    if (table === undefined) return undefined;
    let known = codes.get(table);
    if (known === undefined) {
      known = new Set(exportedCodes(catalogue, table).map((one) => one.code));
      codes.set(table, known);
    }
    return known.has(code);
  };
}
