import { defineConfig } from 'vitest/config';

/** Large seeded corpora: minutes, not seconds. */
export default defineConfig({
  test: { include: ['tests/slow/**/*.test.ts'], testTimeout: 600_000, hookTimeout: 600_000 },
});
