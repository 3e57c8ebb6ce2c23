import { mergeConfig } from 'vitest/config';
import quick from '../vitest.config.ts';

/** The quick suite without the command line, and without what looks at the sources as text, which every mutant changes. */
export default mergeConfig(quick, {
  test: {
    exclude: ['tests/cli/**', 'tests/{layers,readme}.test.ts', 'tests/validate/browser.test.ts'],
    testTimeout: 120_000,
  },
});
