import { existsSync, writeFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { askAll } from './ask-all.ts';
import { basesFile, currentBases, keptBases } from './bases.ts';
import { releases } from './definitions.ts';
import { faultsTable, tableFile } from './faults-table.ts';
import { mutants } from './mutants.ts';
import { keptVerdicts, type Verdicts, verdictsFile, verdictsText } from './verdicts.ts';

const usage = `usage: tsx tests/reference/record-verdicts.ts [--bases] [--all]

Asks HL7's validator about every mutant that has no kept verdict and writes verdicts/verdicts.json
and verdicts/table.md. --bases exports the bases anew first, --all asks about every mutant.`;

async function main(args: readonly string[]): Promise<number> {
  if (args.some((arg) => arg !== '--bases' && arg !== '--all')) {
    console.error(usage);
    return 2;
  }
  if (args.includes('--bases')) {
    const lines = currentBases().map((base) => `${JSON.stringify(base)}\n`);
    writeFileSync(basesFile, gzipSync(lines.join(''), { level: 9 }));
  }
  const bases = keptBases();
  const cases = releases.flatMap((version) => [...mutants(bases, version)]);
  const known = args.includes('--all') || !existsSync(verdictsFile) ? none : keptVerdicts();
  const verdicts = await askAll(bases, cases, known);
  writeFileSync(verdictsFile, verdictsText(verdicts));
  writeFileSync(tableFile, faultsTable(verdicts));
  return 0;
}

const none: Verdicts = { R4: new Map(), R4B: new Map(), R5: new Map() };

process.exitCode = await main(process.argv.slice(2));
