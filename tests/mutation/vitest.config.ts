import { existsSync, readFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { mergeConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import quick from '../vitest.config.ts';
import { type Instrumented, workFiles } from './plan.ts';

const root = resolve(import.meta.dirname, '../..');
const { sources }: Pick<Instrumented, 'sources'> = existsSync(workFiles.instrumented)
  ? JSON.parse(readFileSync(workFiles.instrumented, 'utf8'))
  : { sources: {} };
const folders = new Set(Object.keys(sources).map((file) => file.split('/')[1] ?? ''));

/** Tests of the folders under test come first: what they kill costs the others nothing. */
class NearestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const far = ({ moduleId }: TestSpecification): number =>
      folders.has(relative(root, moduleId).split('/')[1] ?? '') ? 0 : 1;
    return [...files].sort(
      (a, b) => far(a) - far(b) || (a.moduleId < b.moduleId ? -1 : a.moduleId > b.moduleId ? 1 : 0),
    );
  }
}

/** The quick suite without the command line, and without what looks at the sources as text, on sources with mutants. */
export default mergeConfig(quick, {
  root,
  plugins: [
    {
      name: 'mutants',
      enforce: 'pre',
      load: (id: string) => sources[relative(root, id.split('?')[0] ?? '')],
    },
  ],
  test: {
    exclude: ['tests/cli/**', 'tests/{layers,readme}.test.ts', 'tests/validate/browser.test.ts'],
    runner: resolve(import.meta.dirname, 'mutant-runner.ts'),
    sequence: { sequencer: NearestFirst },
    maxWorkers: 1,
    // Mutants of all tests run within one: what loops is ended by its count, what hangs by run.ts.
    testTimeout: 3_600_000,
    slowTestThreshold: 1e9,
    dangerouslyIgnoreUnhandledErrors: true,
    // What is written is of mutants.
    onConsoleLog: (log: string) => log.startsWith('MUTATION'),
  },
});
