import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/published/**', 'tests/reference/**', 'node_modules/**'],
    testTimeout: 30_000,
  },
});
