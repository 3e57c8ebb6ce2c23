import { defineConfig } from 'vitest/config';

/** Needs GNU split and xargs, Python 3 with venv, and Java 17; fetches Spark once. Kills what it starts. */
export default defineConfig({
  test: {
    include: ['tests/scale/**/*.test.ts'],
    globalSetup: ['tests/scale/setup.ts'],
    fileParallelism: false,
    testTimeout: 900_000,
    hookTimeout: 900_000,
  },
});
