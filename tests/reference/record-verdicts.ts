import { writeFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { currentBases, keptBases } from './bases.ts';
import { type FhirRelease, validateCorpus } from './corpus.ts';
import { extensionsPack, releases } from './definitions.ts';
import { type MutantCase, mutants } from './mutants.ts';
import { type Verdict, verdictOn, verdictsFile, verdictsText } from './verdicts.ts';

const usage = `usage: tsx tests/reference/record-verdicts.ts [--bases]

Asks HL7's validator about every mutant and writes verdicts/verdicts.json. With --bases the bases are
exported anew first.`;

async function main(args: readonly string[]): Promise<number> {
  if (args.some((arg) => arg !== '--bases')) {
    console.error(usage);
    return 2;
  }
  if (args.includes('--bases')) {
    const lines = currentBases().map((base) => `${JSON.stringify(base)}\n`);
    const file = new URL('verdicts/bases.ndjson.gz', import.meta.url);
    writeFileSync(file, gzipSync(lines.join(''), { level: 9 }));
  }
  const bases = keptBases();
  for await (const { id, valid } of validateCorpus(
    bases.map(({ name, version, text }) => ({ id: `${version}/${name}`, version, text })),
    { load: await extensionsPack() },
  )) {
    if (valid) continue;
    console.error(`${id} is not sound: a mutant of it would have two faults`);
    return 1;
  }
  const cases = releases.flatMap((version) => [...mutants(bases, version)]);
  const verdicts: Record<FhirRelease, Map<string, Verdict[]>> = {
    R4: new Map(),
    R4B: new Map(),
    R5: new Map(),
  };
  let at = 0;
  for await (const result of validateCorpus(asked(cases), { load: await extensionsPack() })) {
    const mutant = cases[at++];
    if (mutant === undefined) break;
    const list = verdicts[mutant.version].get(mutant.fault) ?? [];
    list.push(verdictOn(mutant, result));
    verdicts[mutant.version].set(mutant.fault, list);
    if (at % 500 === 0) console.error(`${at} of ${cases.length}`);
  }
  writeFileSync(verdictsFile, verdictsText(verdicts));
  return 0;
}

function* asked(cases: readonly MutantCase[]) {
  for (const { digest, version, text } of cases) yield { id: digest, version, text };
}

process.exitCode = await main(process.argv.slice(2));
