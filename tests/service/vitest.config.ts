import { defineConfig } from 'vitest/config';

/** Needs `npm ci --prefix examples/service`; starts and kills the service example on loopback. */
export default defineConfig({
  test: {
    include: ['tests/service/**/*.test.ts'],
    globalSetup: ['tests/service/setup.ts'],
    fileParallelism: false,
    testTimeout: 300_000,
    hookTimeout: 120_000,
  },
});
