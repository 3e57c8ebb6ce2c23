import { defineConfig } from 'vitest/config';

/** Needs `npm run build`; packs `dist`, installs it into output/package and uses it as a stranger would. */
export default defineConfig({
  test: {
    include: ['tests/package/**/*.test.ts'],
    globalSetup: ['tests/package/install.ts'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
  },
});
