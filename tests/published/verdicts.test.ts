import { describe, expect, it } from 'vitest';
import { hasErrors } from '../../src/index.ts';
import { keptExampleVerdicts } from '../reference/example-verdicts.ts';
import { publishedCorpus } from '../reference/examples.ts';
import { ourIssues } from '../reference/ours.ts';
import listed from './verdict-differences.json' with { type: 'json' };

// The whole validation of every published example of a held resource, single resources as they are
// and bundles as bundles, beside the verdict of HL7's validator. tests/reference/published.test.ts
// has it give the verdicts again; verdict-differences.json tells what it cannot see offline.

const kept = keptExampleVerdicts();

describe.each(['R4', 'R4B', 'R5'] as const)('published examples of %s', (version) => {
  it("have the verdict of HL7's validator, but for the listed differences", async () => {
    const examples = await publishedCorpus(version);
    const verdicts = kept[version];
    expect(examples.map(({ file }) => file)).toEqual(Object.keys(verdicts));

    const differences: string[] = [];
    const counts = { valid: 0, invalid: 0 };
    for (const { file, text } of examples) {
      const errors = ourIssues(text, version).filter((found) => hasErrors([found]));
      const theirs = verdicts[file] ?? [];
      const ours = errors.length === 0;
      if (ours === (theirs.length === 0)) counts[ours ? 'valid' : 'invalid'] += 1;
      else if (ours) differences.push(`acceptedByUsAlone ${file}`);
      else differences.push(`refusedByUsAlone ${file}`);
    }
    const rows = (['refusedByUsAlone', 'acceptedByUsAlone'] as const).flatMap((kind) =>
      listed[kind]
        .filter(({ versions }) => versions.includes(version))
        .map(({ file }) => `${kind} ${file}`),
    );
    console.info(
      `${version}: ${examples.length} examples, ${counts.valid} valid for both, ` +
        `${counts.invalid} refused by both, ${differences.length} of listed differences`,
    );
    // A difference that is not listed fails, and so does a row that nothing shows any more.
    expect(differences.sort()).toEqual(rows.sort());
    expect(examples.length).toBeGreaterThan(200);
  });
});
