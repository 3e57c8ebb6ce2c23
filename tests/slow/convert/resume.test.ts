import { existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { gzipSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import { zipOf } from '../../convert/bulk/archive.ts';
import { buildCli, type Ended, startCli } from '../../convert/bulk/built-cli.ts';
import { contents, temporaryFolder } from '../../convert/bulk/folder.ts';
import { messyRows } from '../../convert/csv/messy-rows.ts';
import { csvMapping } from '../../convert/csv/suite.ts';
import { type Random, seeded } from '../../convert/random.ts';

/** Exams in each of three inputs; a checkpoint stands after every 2000. */
const EXAMS = 3000;
const TIMEOUT_MS = 3_600_000;

const folder = temporaryFolder();
let program = '';

beforeAll(() => {
  program = buildCli();
  mkdirSync(join(folder, 'in'));
  const text = (seed: number): Buffer =>
    Buffer.from(messyRows(seed, EXAMS).text.replaceAll('\nX', `\nX${seed}-`));
  writeFileSync(join(folder, 'in/a.csv'), text(1));
  writeFileSync(join(folder, 'in/b.csv.gz'), gzipSync(text(2)));
  writeFileSync(join(folder, 'in/c.zip'), zipOf([{ name: 'c.csv', content: text(3) }]));
  writeFileSync(join(folder, 'mapping.json'), JSON.stringify(csvMapping));
});

interface Moment {
  readonly when: string;
  /** Resolves when the process is to be killed, `part` of the delay after its sign. */
  readonly wait: (out: string, ended: Promise<unknown>, part: number) => Promise<void>;
}

/** Twenty moments: before anything is written, just after, anywhere, and while the end is written. */
function momentsOf(random: Random, time: number): Moment[] {
  const after = (when: string, delay: number, sign?: (out: string) => boolean): Moment => ({
    when: `${when} + ${delay} ms`,
    wait: async (out, ended, part) => {
      let isOver = false;
      void ended.then(() => {
        isOver = true;
      });
      while (sign !== undefined && !isOver && !sign(out)) await setTimeout(1);
      await setTimeout(Math.floor(delay * part));
    },
  });
  const times = (count: number, make: () => Moment): Moment[] =>
    Array.from({ length: count }, make);
  return [
    ...times(4, () => after('start', random.below(100))),
    ...times(3, () => after('folder', random.below(100), existsSync)),
    ...times(9, () => after('start', random.below(Math.ceil(time)))),
    ...times(4, () => after('summary', random.below(12), summaryBegun)),
  ];
}

function summaryBegun(out: string): boolean {
  return existsSync(out) && readdirSync(out).some((name) => name.startsWith('summary'));
}

function argumentsOf(out: string, jobs: number, ...more: readonly string[]): string[] {
  const inputs = ['convert', join(folder, 'in'), '--mapping', join(folder, 'mapping.json')];
  const settings = ['--to', 'resources', '--ledger', '--jobs', String(jobs)];
  return [...inputs, ...settings, '--out', out, ...more];
}

function run(out: string, jobs: number, ...more: readonly string[]): Promise<Ended> {
  return startCli(program, argumentsOf(out, jobs, ...more)).ended;
}

/** Starts a run and kills it; gives whether it was still running. */
async function killed(
  args: readonly string[],
  moment: Moment,
  out: string,
  part = 1,
): Promise<boolean> {
  const { child, ended } = startCli(program, args);
  await moment.wait(out, ended, part);
  child.kill('SIGKILL');
  return (await ended).signal === 'SIGKILL';
}

/** The same from nothing, again and earlier where a run was quicker than the moment. */
async function killedOnItsWay(
  args: readonly string[],
  moment: Moment,
  out: string,
): Promise<boolean> {
  for (let part = 1; part > 1 / 256; part /= 2) {
    rmSync(out, { recursive: true, force: true });
    if (await killed(args, moment, out, part)) return true;
  }
  return false;
}

describe('the built command line', () => {
  it('gives the same bytes on one thread, on two and on four', {
    timeout: TIMEOUT_MS,
  }, async () => {
    const one = await run(join(folder, 'one'), 1);
    expect(one.out).toContain(`${3 * EXAMS} exam(s) read`);
    // Some exams are in quarantine.
    expect(one.code).toBe(1);
    for (const jobs of [2, 4]) {
      const out = join(folder, `jobs-${jobs}`);
      expect(await run(out, jobs)).toEqual(one);
      expect(contents(out)).toEqual(contents(join(folder, 'one')));
    }
  });

  it.each([1, 2])(
    'killed at 20 moments, in %i thread(s), it ends with the same bytes',
    {
      timeout: TIMEOUT_MS,
    },
    async (jobs) => {
      const whole = join(folder, `whole-${jobs}`);
      const start = performance.now();
      const unbroken = await run(whole, jobs);
      const random = seeded(2024 + jobs);
      const moments = momentsOf(random, performance.now() - start);
      let stopped = 0;
      for (const [round, moment] of moments.entries()) {
        const out = join(folder, `killed-${jobs}-${round}`);
        if (await killedOnItsWay(argumentsOf(out, jobs), moment, out)) stopped += 1;
        // A third of the runs that go on are killed again, and some go on in another number of threads.
        const again = moments[random.below(moments.length)];
        if (again !== undefined && random.chance(1 / 3)) {
          await killed(argumentsOf(out, jobs, '--resume'), again, out);
        }
        const resumed = await run(out, random.chance(1 / 4) ? 3 - jobs : jobs, '--resume');
        expect({ at: moment.when, ...resumed }).toEqual({ at: moment.when, ...unbroken });
        expect(contents(out)).toEqual(contents(whole));
      }
      expect(moments.length).toBe(20);
      console.log(
        `${jobs} thread(s): ${stopped} of ${moments.length} runs were killed on their way`,
      );
      expect(stopped).toBeGreaterThanOrEqual(15);
    },
  );
});
