import type { Base } from './bases.ts';
import { type FhirRelease, validateCorpus } from './corpus.ts';
import { extensionsPack } from './definitions.ts';
import type { MutantCase } from './mutants.ts';
import { type Verdict, type Verdicts, verdictOn } from './verdicts.ts';

/**
 * Verdicts on every mutant: the known ones as they are, the others from HL7's validator.
 * @throws Error when it finds an error in one of the bases, since a mutant would have two faults
 */
export async function askAll(
  bases: readonly Base[],
  cases: readonly MutantCase[],
  known: Verdicts,
): Promise<Verdicts> {
  const before = cases.map((mutant) => knownVerdict(known, mutant));
  const unknown = cases.filter((_, at) => before[at] === undefined);
  const asked = [
    ...bases.map(({ name, version, text }) => ({ id: name, version, text })),
    ...unknown.map(({ digest, version, text }) => ({ id: digest, version, text })),
  ];
  const results: Verdict[] = [];
  let at = 0;
  for await (const result of validateCorpus(asked, { load: await extensionsPack() })) {
    const mutant = unknown[at - bases.length];
    if (mutant !== undefined) results.push(verdictOn(mutant, result));
    else if (!result.valid) throw new Error(`the base ${result.id} is not sound`);
    at += 1;
    if (at % 500 === 0) console.error(`${at} of ${asked.length}`);
  }
  const verdicts: Record<FhirRelease, Map<string, Verdict[]>> = {
    R4: new Map(),
    R4B: new Map(),
    R5: new Map(),
  };
  for (const [place, { version, fault }] of cases.entries()) {
    const verdict = before[place] ?? results.shift();
    if (verdict === undefined) throw new Error('the validator gave too few verdicts');
    const list = verdicts[version].get(fault);
    if (list === undefined) verdicts[version].set(fault, [verdict]);
    else list.push(verdict);
  }
  return verdicts;
}

function knownVerdict(known: Verdicts, { version, fault, base, seed, digest }: MutantCase) {
  return known[version]
    .get(fault)
    ?.find((one) => one.base === base && one.seed === seed && one.digest === digest);
}
