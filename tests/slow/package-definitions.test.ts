import { describe, expect, test } from 'vitest';
import { packageFiles } from '../../src/generate/fhir-package/package-files.ts';
import { CANONICAL_BASE } from '../../src/terminology/canonical-base.ts';
import * as r4 from '../../src/validate/versions/all-r4.ts';
import * as r4b from '../../src/validate/versions/all-r4b.ts';
import * as r5 from '../../src/validate/versions/all-r5.ts';

// The package of R4 serves R4B too; only the guide says which version it is for.
describe.each([
  ['R4', 'R4', r4],
  ['R4', 'R4B', r4b],
  ['R5', 'R5', r5],
] as const)('the package for %s, read in %s', (version, _, { validateText }) => {
  test('every definition and example is valid', async () => {
    const order = { version, base: CANONICAL_BASE, packageVersion: '1.0.0' } as const;
    const files = [...(await packageFiles(order))].filter(([name]) => /\/[A-Z][^/]*$/.test(name));
    expect(files.length).toBeGreaterThan(180);
    const wrong = files.flatMap(([name, text]) =>
      validateText(text)
        .issues.filter(({ severity }) => severity === 'error')
        .map(({ path, message }) => `${name} ${path.join('.')}: ${message}`),
    );
    expect(wrong).toEqual([]);
  });
});
