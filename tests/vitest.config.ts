import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: [
      'tests/{published,reference,slow,bench,browser,readers,service,queue,package,recipes}/**',
      '**/node_modules/**',
    ],
    testTimeout: 30_000,
  },
});
