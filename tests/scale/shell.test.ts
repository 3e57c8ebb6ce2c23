import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seeded } from '../convert/random.ts';
import { firstDifference } from './differences.ts';
import { answersOf, calls, ended, examples, program, recordsOf, startedBy } from './programs.ts';
import { mapping } from './table.ts';

const RECORDS = 3000;
const KILLS = 8;
const script = join(examples, 'shell/convert.sh');
const odd = join(import.meta.dirname, 'odd-worker.mjs');

describe('the example in the shell', () => {
  let folder: string;
  let records: string[];
  let expected: string[];

  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'shell-'));
    records = recordsOf(RECORDS);
    expected = answersOf(calls.convert, records);
    writeFileSync(join(folder, 'records'), records.map((line) => `${line}\n\n`).join(''));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  function start(settings: Readonly<Record<string, string>>, out: string, map = mapping) {
    return spawn('bash', [script, join(folder, 'records'), map, join(folder, out)], {
      env: {
        ...process.env,
        PROGRAM: `${process.execPath} ${program}`,
        OPTIONS: '--to exams',
        CORES: '2',
        PART: '250',
        ...settings,
      },
      stdio: ['ignore', 'inherit', 'pipe'],
    });
  }
  const linesIn = (name: string): string[] =>
    readFileSync(join(folder, name), 'utf8').split('\n').slice(0, -1);

  it('gives the bytes of one worker, in order, and exit code 4 for what was kept back', async () => {
    expect(await ended(start({}, 'plain'))).toMatchObject({ code: 4 });
    expect(firstDifference(linesIn('plain'), expected)).toBeUndefined();
  });

  it(`gives them with its workers killed ${KILLS} times`, async () => {
    // A record that is at work at several kills is no reason to keep it back here.
    const child = start({ TRIES: '20' }, 'killed');
    const over = ended(child);
    const random = seeded(7);
    let killed = 0;
    while (killed < KILLS && child.exitCode === null) {
      await setTimeout(100 + random.below(200));
      const workers = (await startedBy(child)).filter(({ command }) =>
        command.includes('convert --lines'),
      );
      const one = workers.filter(({ command }) => command.startsWith(process.execPath)).at(-1);
      if (one === undefined) continue;
      process.kill(one.pid, 'SIGKILL');
      killed += 1;
    }
    expect(await over).toMatchObject({ code: 4 });
    expect(killed).toBe(KILLS);
    expect(firstDifference(linesIn('killed'), expected)).toBeUndefined();
  });

  it('keeps back a record that ends every worker, and answers all others', async () => {
    const PROGRAM = `${process.execPath} ${odd} ${program} K-1234;`;
    expect(await ended(start({ PROGRAM }, 'deadly'))).toMatchObject({ code: 4 });
    const found = linesIn('deadly');
    const at = 1233;
    expect(JSON.parse(found[at] ?? '')).toMatchObject({
      id: at + 1,
      quarantine: { reason: 'internal-fault', raw: records[at] },
    });
    const without = (list: readonly string[]) => list.filter((_, place) => place !== at);
    expect(firstDifference(without(found), without(expected))).toBeUndefined();
  });

  it('fails where nothing can be answered', async () => {
    writeFileSync(join(folder, 'wrong.json'), '{}');
    const { code } = await ended(start({}, 'wrong', join(folder, 'wrong.json')));
    expect([0, 4]).not.toContain(code);
    expect(() => linesIn('wrong')).toThrow('ENOENT');
  });
});
