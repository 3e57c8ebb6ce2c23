import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: [
      'tests/{hostile,published,reference,slow,bench,browser,readers,service,queue,scale,package,recipes}/**',
      '**/node_modules/**',
    ],
    // By default one worker fewer than there are cores, which leaves half of a small machine idle.
    maxWorkers: '100%',
    testTimeout: 30_000,
    // Files of one worker share the modules: most of the time went into loading them anew.
    isolate: false,
  },
});
