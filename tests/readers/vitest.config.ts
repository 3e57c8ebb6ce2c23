import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/readers/**/*.test.ts'],
    testTimeout: 600_000,
    hookTimeout: 1_200_000,
  },
});
