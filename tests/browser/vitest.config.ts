import { defineConfig } from 'vitest/config';

/** Needs Chromium, by default /usr/bin/chromium, else as CHROMIUM says. */
export default defineConfig({
  test: {
    include: ['tests/browser/**/*.test.ts'],
    exclude: ['**/node_modules/**'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
