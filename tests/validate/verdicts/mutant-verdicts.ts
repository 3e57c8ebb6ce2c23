import { describe, expect, it } from 'vitest';
import { hasErrors, issueText } from '../../../src/index.ts';
import { keptBases } from '../../reference/bases.ts';
import { compareVerdicts } from '../../reference/compare.ts';
import type { FhirRelease } from '../../reference/corpus.ts';
import { ourIssues } from '../../reference/ours.ts';

/** Holds our verdicts on mutants of a version, all or every so many, to those of HL7's validator. */
export function describeMutants(version: FhirRelease, every = 1): void {
  describe(`mutants in ${version}`, () => {
    it('are made of bundles that we accept', () => {
      const refused = keptBases()
        .filter((base) => base.version === version)
        .flatMap(({ name, text }) =>
          ourIssues(text, version)
            .filter((found) => hasErrors([found]))
            .map((found) => `${name}: ${issueText(found)}`),
        );
      expect(refused).toEqual([]);
    });

    it("have the verdict of HL7's validator, but for the listed differences", () => {
      const told = compareVerdicts(version, every);
      const { mutants, agreed, unlisted, agreedOfUnlisted } = told;
      const share = ((100 * agreedOfUnlisted) / unlisted).toFixed(2);
      console.info(
        `${version}: ${mutants} mutants, ${agreed} with the same verdict; ` +
          `${mutants - unlisted} of listed differences; of the others ${share} % agree`,
      );
      expect(told).toMatchObject({ unknown: [], surprises: [], stale: [] });
      expect(mutants).toBeGreaterThan(1850 / every);
    }, 300_000);
  });
}
