import { codeSystemUrl } from '../../fhir/names/code-systems.ts';
import { CANONICAL_BASE } from '../../fhir/names/systems.ts';
import type { TableName } from '../../terminology/built-in.ts';
import type { Clinic } from '../clinic.ts';

/** The table that a line of a code map begins with, by its name or URL; undefined for other systems. */
export function mappedTable({ file, catalogue }: Clinic, source: string): TableName | undefined {
  const base = file.canonicalBase ?? CANONICAL_BASE;
  const tables = Object.keys(catalogue) as TableName[]; // keys of a record over the tables
  return tables.find((table) => {
    const url = codeSystemUrl(base, table);
    return source === url || source === url.slice(`${base}/CodeSystem/`.length);
  });
}
