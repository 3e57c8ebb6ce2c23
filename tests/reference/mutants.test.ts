import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { askAll } from './ask-all.ts';
import { keptBases } from './bases.ts';
import { releases } from './definitions.ts';
import { faultsTable } from './faults-table.ts';
import { mutants } from './mutants.ts';
import { verdictsFile, verdictsText } from './verdicts.ts';

const none = { R4: new Map(), R4B: new Map(), R5: new Map() };

it('HL7s validator says of every mutant what it said when the verdicts were kept', async () => {
  const bases = keptBases();
  const cases = releases.flatMap((version) => [...mutants(bases, version)]);
  expect(cases.length).toBeGreaterThanOrEqual(5_000);
  const verdicts = await askAll(bases, cases, none);
  console.info(faultsTable(verdicts));
  expect(verdictsText(verdicts)).toBe(readFileSync(verdictsFile, 'utf8'));
}, 3_600_000);
