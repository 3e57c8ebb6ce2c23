import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { hasErrors, issueText } from '../../src/index.ts';
import { keptBases } from '../reference/bases.ts';
import { compareVerdicts } from '../reference/compare.ts';
import { faultsTable, tableFile } from '../reference/faults-table.ts';
import { ourIssues } from '../reference/ours.ts';
import { keptVerdicts } from '../reference/verdicts.ts';

// HL7's validator gave its verdicts once; tests/reference/mutants.test.ts has it give them again.

const bases = keptBases();

describe.each(['R4', 'R4B', 'R5'] as const)('mutants in %s', (version) => {
  it('are made of bundles that we accept', () => {
    const refused = bases
      .filter((base) => base.version === version)
      .flatMap(({ name, text }) =>
        ourIssues(text, version)
          .filter((found) => hasErrors([found]))
          .map((found) => `${name}: ${issueText(found)}`),
      );
    expect(refused).toEqual([]);
  });

  it("have the verdict of HL7's validator, but for the listed differences", () => {
    const told = compareVerdicts(version);
    const { mutants, agreed, unlisted, agreedOfUnlisted } = told;
    const share = ((100 * agreedOfUnlisted) / unlisted).toFixed(2);
    console.info(
      `${version}: ${mutants} mutants, ${agreed} with the same verdict; ` +
        `${mutants - unlisted} of listed differences; of the others ${share} % agree`,
    );
    expect(told).toMatchObject({ unknown: [], surprises: [], stale: [] });
    expect(mutants).toBeGreaterThan(1850);
  }, 300_000);
});

describe('table of faults', () => {
  it('is that of the kept verdicts', () => {
    expect(readFileSync(tableFile, 'utf8')).toBe(faultsTable(keptVerdicts()));
  });
});
