import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { guideWithTables } from '../../src/generate/record-tables.ts';

it('has the sizes and codes of the examples as they leave now (npm run record-tables)', () => {
  const guide = readFileSync(new URL('../../examples/guides/filing.md', import.meta.url), 'utf8');
  expect(guide).toMatch(/<!-- sizes -->\n\| example/);
  expect(guideWithTables(guide)).toBe(guide);
});
