import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig } from 'vitest/config';

const tests = join(import.meta.dirname, '..');

/** Files of the quick suite that take a part of a sample there, and all of it here. */
const sampled = readdirSync(tests, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.test.ts') && !file.includes('node_modules'))
  .filter((file) => /from '(?:\.\.?\/)+sampled\.ts'/.test(readFileSync(join(tests, file), 'utf8')))
  .map((file) => `tests/${file}`);

/** Large seeded corpora: minutes, not seconds. */
export default defineConfig({
  test: {
    include: ['tests/slow/**/*.test.ts', ...sampled],
    env: { WHOLE_SAMPLES: '1' },
    testTimeout: 600_000,
    hookTimeout: 600_000,
  },
});
