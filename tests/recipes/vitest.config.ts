import { defineConfig } from 'vitest/config';

/** The recipes of DEVELOPERS.md, carried out in a copy of the project: minutes, one after the other. */
export default defineConfig({
  test: {
    include: ['tests/recipes/*.test.ts'],
    testTimeout: 1_200_000,
    hookTimeout: 1_200_000,
    bail: 1,
  },
});
