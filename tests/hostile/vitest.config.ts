import { defineConfig } from 'vitest/config';

/** Growth by hostile shapes, and damaged inputs by seed: a sample here, hours by their scripts. */
export default defineConfig({
  test: { include: ['tests/hostile/**/*.test.ts'], testTimeout: 3_600_000, maxWorkers: 1 },
});
