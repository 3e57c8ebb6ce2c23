import { defineConfig } from 'vitest/config';

/** Needs `npm ci --prefix examples/queue` and redis-server; starts and kills the queue example on loopback. */
export default defineConfig({
  test: {
    include: ['tests/queue/**/*.test.ts'],
    globalSetup: ['tests/queue/setup.ts'],
    fileParallelism: false,
    testTimeout: 300_000,
    hookTimeout: 120_000,
  },
});
