import { readFileSync, writeFileSync } from 'node:fs';
import { Instrumenter } from '@stryker-mutator/instrumenter';

/**
 * Puts all mutants of the plan into the sources at once, each behind a switch, with the instrumenter of
 * StrykerJS. From stdin `{ file: [[first, last line], ...] }`, all of a file where the list is empty; to
 * the file named: the sources by file, and the mutants.
 */
const plan = JSON.parse(readFileSync(0, 'utf8'));
const files = Object.entries(plan).map(([name, stretches]) => ({
  name,
  content: readFileSync(name, 'utf8'),
  mutate:
    stretches.length === 0 ||
    stretches.map(([first, last]) => ({
      start: { line: first - 1, column: 0 },
      end: { line: last - 1, column: Number.POSITIVE_INFINITY },
    })),
}));
const silent = { isDebugEnabled: () => false, debug() {}, info() {}, warn() {} };
const options = { plugins: null, excludedMutations: [], ignorers: [], noHeader: false };
const { files: sources, mutants } = await new Instrumenter(silent).instrument(files, options);
writeFileSync(
  process.argv[2],
  JSON.stringify({
    sources: Object.fromEntries(sources.map(({ name, content }) => [name, content])),
    mutants: mutants.filter(({ status }) => status === undefined),
  }),
);
