import { defineConfig } from 'vitest/config';

// Fetches the published packages (some 100 MB) on the first run; see src/generate/published.ts.
export default defineConfig({
  test: {
    include: ['tests/published/**/*.test.ts'],
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
