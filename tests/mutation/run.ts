import { spawn, spawnSync } from 'node:child_process';
import { appendFileSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { type Instrumented, workFiles } from './plan.ts';
import { mutationScores, scoreTable } from './score.ts';

/**
 * Mutation testing of the hand-written heart, with the mutants of StrykerJS:
 *
 *   npm run test:mutation -- [folder or file below src ...] [--sample 200] [--seed 1]
 *     [--tests tests/report,tests/flat] [--test-seconds 30]
 *
 * Without names: the folders of the heart. `--sample` takes that many stretches of 12 lines, drawn by
 * the seed. All mutants are in the sources at once, each behind a switch, and each test runs with those
 * it reaches one after the other, in one process. `--tests` asks only tests whose path holds one of these;
 * `--test-seconds` is what one test may take for all mutants together: with less, a score is a lower
 * bound, and what was left out is told. Survivors are listed with their places. Left out of the score is
 * what only loading of modules runs (tables as data), and what runs once in a process.
 */
const heart = ['kinds', 'export', 'read', 'report', 'checks', 'model', 'convert', 'validate'];
/** Generated, data, or what makes invented exams for tests, in which no draw is better than another. */
const notHeart = /\/(compiled|tables|words)\/|\.d\.ts$|\/(index|sample)\.ts$/;
const STRETCH = 12;

const root = resolve(import.meta.dirname, '../..');

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sample: { type: 'string' },
    seed: { type: 'string', default: '1' },
    tests: { type: 'string' },
    'test-seconds': { type: 'string', default: '30' },
  },
});

function filesOf(name: string): string[] {
  if (name.endsWith('.ts')) return [`src/${name}`];
  return readdirSync(join(root, 'src', name), { recursive: true, encoding: 'utf8' })
    .map((file) => `src/${name}/${file}`)
    .filter((file) => file.endsWith('.ts') && !notHeart.test(file))
    .sort();
}

/** Draws by the generator of Lehmer (minimal standard: Park and Miller 1988), the same for a seed. */
function drawn<T>(from: readonly T[], count: number, seed: number): T[] {
  const left = [...from];
  let state = seed;
  return Array.from({ length: Math.min(count, left.length) }, () => {
    state = (state * 48271) % 2147483647;
    return left.splice(state % left.length, 1);
  }).flat();
}

type Stretch = readonly [file: string, first: number, last: number];

function stretchesOf(file: string): Stretch[] {
  const lines = readFileSync(join(root, file), 'utf8').split('\n').length;
  return Array.from(
    { length: Math.ceil(lines / STRETCH) },
    (_, at) => [file, at * STRETCH + 1, Math.min(lines, (at + 1) * STRETCH)] as const,
  );
}

const files = (positionals.length > 0 ? positionals : heart).flatMap(filesOf);
const plan: Record<string, [number, number][]> = {};
if (values.sample === undefined) for (const file of files) plan[file] = [];
else {
  const stretches = drawn(files.flatMap(stretchesOf), Number(values.sample), Number(values.seed));
  for (const [file, first, last] of stretches) {
    plan[file] ??= [];
    plan[file].push([first, last]);
  }
}

mkdirSync(workFiles.folder, { recursive: true });
for (const file of [workFiles.instrumented, workFiles.verdicts, workFiles.current]) {
  rmSync(file, { force: true });
}
const { status } = spawnSync(
  process.execPath,
  [join(import.meta.dirname, 'instrument.mjs'), workFiles.instrumented],
  { cwd: root, input: JSON.stringify(plan), stdio: ['pipe', 'inherit', 'inherit'] },
);
if (status !== 0) process.exit(1);
const { mutants } = JSON.parse(readFileSync(workFiles.instrumented, 'utf8')) as Instrumented; // as instrument.mjs writes it
console.log(`${mutants.length} mutants in ${Object.keys(plan).length} files`);

/** Seconds after which a mutant that is switched on has hung the process. */
const HUNG = 180;

/** Runs the tests; false where a mutant hung them, which has then its verdict. */
function ask(): Promise<boolean> {
  const which = values.tests
    ? ['run', ...values.tests.split(',')]
    : ['related', '--run', ...Object.keys(plan)];
  const tests = spawn(
    join(root, 'node_modules/.bin/vitest'),
    [...which, '--config', 'tests/mutation/vitest.config.ts'],
    {
      cwd: root,
      stdio: 'inherit',
      detached: true,
      env: { ...process.env, MUTATION_TEST_MS: String(1000 * Number(values['test-seconds'])) },
    },
  );
  let hung = false;
  const watch = setInterval(() => {
    const since = statSync(workFiles.current, { throwIfNoEntry: false })?.mtimeMs ?? Date.now();
    const id = Date.now() - since > 1000 * HUNG && readFileSync(workFiles.current, 'utf8');
    if (!id || hung || tests.pid === undefined) return;
    hung = true;
    appendFileSync(workFiles.verdicts, `${JSON.stringify({ id, said: 'hung' })}\n`);
    rmSync(workFiles.current);
    process.kill(-tests.pid, 'SIGKILL');
  }, 5000);
  return new Promise((done) => {
    tests.on('exit', () => {
      clearInterval(watch);
      done(!hung);
    });
  });
}

while (!(await ask())) console.log('A mutant hung its tests; on without it.');
const { scores, survivors } = mutationScores(mutants, readFileSync(workFiles.verdicts, 'utf8'));
console.log(scoreTable(scores));
for (const line of survivors) console.log(line);
