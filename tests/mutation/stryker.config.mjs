/** @type {import('@stryker-mutator/api/core').PartialStrykerOptions} */
export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: 'tests/mutation/vitest.config.ts', related: true },
  coverageAnalysis: 'perTest',
  concurrency: 2,
  // A machine under load is slow without a loop: only what takes many times as long is one.
  timeoutMS: 60_000,
  timeoutFactor: 4,
  dryRunTimeoutMinutes: 60,
  tempDirName: 'output/mutation/sandbox',
  cleanTempDir: 'always',
  reporters: ['json', 'progress-append-only'],
  jsonReporter: { fileName: 'output/mutation/mutation.json' },
  ignorePatterns: ['/output', '/dist', 'examples/*/node_modules', 'tests/*/node_modules'],
  ignoreStatic: true,
  checkers: [],
  // Tests compare some sources with the guides that show them.
  disableTypeChecks: false,
  allowEmpty: true,
};
