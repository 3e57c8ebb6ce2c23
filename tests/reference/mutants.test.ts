import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { askAll } from './ask-all.ts';
import { keptBases } from './bases.ts';
import { releases } from './definitions.ts';
import { faultsTable } from './faults-table.ts';
import { type MutantCase, mutants } from './mutants.ts';
import { keptVerdicts, type Verdicts, verdictsFile, verdictsText } from './verdicts.ts';

/** All mutants are asked about, or every third where the environment variable says EVERY_MUTANT=3. */
const every = Number(process.env['EVERY_MUTANT'] ?? 1);

it('HL7s validator says of every mutant what it said when the verdicts were kept', async () => {
  const bases = keptBases();
  const cases = releases.flatMap((version) => [...mutants(bases, version)]);
  expect(cases.length).toBeGreaterThanOrEqual(5_000);
  const asked = cases.filter((_, at) => at % every === 0);
  const verdicts = await askAll(bases, cases, without(asked));
  console.info(faultsTable(verdicts));
  console.info(`${asked.length} of ${cases.length} mutants asked about`);
  expect(asked.length).toBeGreaterThan(500);
  expect(verdictsText(verdicts)).toBe(readFileSync(verdictsFile, 'utf8'));
}, 3_600_000);

/** The kept verdicts without those on these mutants, which are to be asked about again. */
function without(asked: readonly MutantCase[]): Verdicts {
  const kept = keptVerdicts();
  const keys = new Set(asked.map(keyOf));
  const rest = (version: MutantCase['version']) =>
    new Map(
      [...kept[version]].map(([fault, list]) => [
        fault,
        list.filter((verdict) => !keys.has(keyOf({ ...verdict, version, fault }))),
      ]),
    );
  return { R4: rest('R4'), R4B: rest('R4B'), R5: rest('R5') };
}

function keyOf(one: Omit<MutantCase, 'text'>): string {
  return [one.version, one.fault, one.base, one.seed, one.digest].join(' ');
}
