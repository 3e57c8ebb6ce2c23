import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/reference/**/*.test.ts'],
    globalSetup: ['tests/reference/setup.ts'],
    // Each file has a Java process of up to 1.5 GB.
    fileParallelism: false,
    testTimeout: 120_000,
    hookTimeout: 600_000,
  },
});
