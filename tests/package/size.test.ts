import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { codeEntries, nodeOnly } from './fresh.ts';
import { bundled, type Size } from './measure.ts';

const budget: Readonly<Record<string, Size>> = JSON.parse(
  readFileSync(join(import.meta.dirname, 'size-budget.json'), 'utf8'),
);

describe('size of each entry', () => {
  it('has a budget, and the budget has no entry that is gone', () => {
    expect(Object.keys(budget).sort()).toEqual(codeEntries.map(({ name }) => name).sort());
  });

  it.each(codeEntries)('$name stays in its budget', async ({ name }) => {
    const { size } = await bundled(name, nodeOnly.has(name) ? 'node' : 'browser');
    console.log(`${name}: ${size.minified} bytes minified, ${size.gzip} gzipped`);
    expect(size.minified).toBeLessThanOrEqual(budget[name]?.minified ?? 0);
    expect(size.gzip).toBeLessThanOrEqual(budget[name]?.gzip ?? 0);
  });
});

describe('entries for browsers', () => {
  it.each(codeEntries.filter(({ name }) => !nodeOnly.has(name)))(
    '$name needs no module of Node',
    async ({ name }) => {
      // For a browser esbuild refuses what it cannot resolve, node: modules among it.
      const { inputs } = await bundled(name, 'browser');
      const external = Object.values(inputs).flatMap(({ imports }) =>
        imports.filter((one) => one.external === true).map(({ path }) => path),
      );
      expect(external).toEqual([]);
    },
  );

  it('are all but those that read files', async () => {
    for (const name of nodeOnly) {
      await expect(bundled(name, 'browser')).rejects.toThrow(/node:/);
    }
  });
});
