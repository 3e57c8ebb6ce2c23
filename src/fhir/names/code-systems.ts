import type { TableName } from '../../terminology/built-in.ts';
import { kebab } from '../../terminology/named-table.ts';

/** Canonical URL of the CodeSystem made from a table: `testPoints` is `…/CodeSystem/test-points`. */
export function codeSystemUrl(base: string, table: TableName): string {
  return `${base}/CodeSystem/${kebab(table)}`;
}

/** Identifier systems of our own, below the canonical base unless the clinic names its own. */
export function identifierSystem(base: string, name: 'exam' | 'statement' | 'tracking'): string {
  return `${base}/NamingSystem/${name}`;
}
