import { readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { builtInCatalogue } from '../../terminology/catalogue.ts';
import { exportedCodes } from '../../terminology/exported-codes.ts';
import { kebab } from '../../terminology/named-table.ts';
import { tableNames } from './languages.ts';

/**
 * Keeps terminology/coverage/code-ledger.json: every code that a release has ever given, so that none
 * is lost or used again with another meaning. New codes are added; a code that has gone must be moved
 * to `retired` by hand, and stays there.
 * Run: npx tsx src/generate/terminology/code-ledger.ts
 */
const target = fileURLToPath(
  new URL('../../../terminology/coverage/code-ledger.json', import.meta.url),
);

type Codes = { readonly [table: string]: readonly string[] };

export interface Ledger {
  readonly title: string;
  readonly licence: string;
  /** In use, by table. */
  readonly codes: Codes;
  /** Given once and never again. */
  readonly retired: Codes;
}

export async function readLedger(): Promise<Ledger> {
  return JSON.parse(await readFile(target, 'utf8'));
}

/** Every code of the tables now; sides follow from the regions and are left out. */
export function currentCodes(): Codes {
  return Object.fromEntries(
    tableNames().map((table) => {
      const codes = exportedCodes(builtInCatalogue, table).filter(({ side }) => side === undefined);
      return [kebab(table), codes.map(({ code }) => code)];
    }),
  );
}

/** What the tables do that a ledger forbids, one line each. */
export function ledgerFaults({ codes, retired }: Ledger, current: Codes): string[] {
  const lost = Object.entries(codes).flatMap(([table, list]) =>
    list
      .filter((code) => current[table]?.includes(code) !== true)
      .map((code) => `${table}: ${code} has gone; move it to retired`),
  );
  const back = Object.entries(retired).flatMap(([table, list]) =>
    list
      .filter((code) => current[table]?.includes(code) === true)
      .map((code) => `${table}: ${code} is retired and cannot be used again`),
  );
  return [...lost, ...back];
}

async function main(): Promise<void> {
  const ledger = await readLedger();
  const current = currentCodes();
  const faults = ledgerFaults(ledger, current);
  if (faults.length > 0) {
    console.error(faults.join('\n'));
    process.exitCode = 1;
    return;
  }
  await writeFile(target, `${JSON.stringify({ ...ledger, codes: current }, null, 1)}\n`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await main();
