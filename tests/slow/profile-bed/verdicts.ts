import { existsSync, readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import type { Guide } from './guides.ts';

/** What HL7's validator said of one mutant beyond what it says of the example itself. */
export interface BedVerdict {
  readonly digest: string;
  /** Names of the new errors, each with its place; none: it accepts the change. */
  readonly errors: readonly string[];
}

export function verdictsFile({ name, version }: Guide): URL {
  return new URL(`verdicts/${name}-${version}.ndjson.gz`, import.meta.url);
}

/** The kept verdicts of a guide by digest; none where it was never asked about. */
export function keptVerdicts(guide: Guide): ReadonlyMap<string, BedVerdict> {
  const file = verdictsFile(guide);
  if (!existsSync(file)) return new Map();
  const lines = gunzipSync(readFileSync(file)).toString('utf8').trim().split('\n');
  // Written by record.ts.
  const rows = lines.map((line) => JSON.parse(line) as [string, string[]]);
  return new Map(rows.map(([digest, errors]) => [digest, { digest, errors }]));
}
