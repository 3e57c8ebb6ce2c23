import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { type MutationReport, mutationScores, scoreTable } from './score.ts';

/**
 * Mutation testing of the hand-written heart with StrykerJS:
 *
 *   npm run test:mutation -- [folder or file below src ...] [--sample 200] [--seed 1]
 *
 * Without names: the folders of the heart. `--sample` takes that many stretches of 12 lines, drawn by
 * the seed, for a score in minutes instead of hours. Survivors are listed with their places; the whole
 * report is output/mutation/mutation.json.
 */
const heart = ['kinds', 'export', 'read', 'report', 'checks', 'model', 'convert', 'validate'];
const notHeart = /\/(compiled|tables|words)\/|\.d\.ts$|\/index\.ts$/;
const STRETCH = 12;

const root = resolve(import.meta.dirname, '../..');
const report = join(root, 'output/mutation/mutation.json');

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { sample: { type: 'string' }, seed: { type: 'string', default: '1' } },
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

function stretchesOf(file: string): string[] {
  const lines = readFileSync(join(root, file), 'utf8').split('\n').length;
  return Array.from(
    { length: Math.ceil(lines / STRETCH) },
    (_, at) => `${file}:${at * STRETCH + 1}-${Math.min(lines, (at + 1) * STRETCH)}`,
  );
}

const files = (positionals.length > 0 ? positionals : heart).flatMap(filesOf);
const mutate =
  values.sample === undefined
    ? files
    : drawn(files.flatMap(stretchesOf), Number(values.sample), Number(values.seed));

rmSync(report, { force: true });
const { status } = spawnSync(
  join(root, 'tests/mutation/node_modules/.bin/stryker'),
  ['run', 'tests/mutation/stryker.config.mjs', '--mutate', mutate.join(',')],
  { cwd: root, stdio: 'inherit' },
);
const { scores, survivors } = mutationScores(
  JSON.parse(readFileSync(report, 'utf8')) as MutationReport,
); // the form that its own schema fixes
console.log(scoreTable(scores));
for (const line of survivors) console.log(line);
process.exitCode = status ?? 1;
