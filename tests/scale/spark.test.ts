import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seeded } from '../convert/random.ts';
import { firstDifference } from './differences.ts';
import {
  answersOf,
  calls,
  ended,
  examples,
  program,
  recordsOf,
  sparkPython,
  startedBy,
  whyNoSpark,
} from './programs.ts';
import { mapping, writeTable } from './table.ts';

const missing = whyNoSpark();
/** CI takes fewer of both. */
const ROWS = Number(process.env['SCALE_ROWS'] ?? 4000);
const KILLS = Number(process.env['SCALE_KILLS'] ?? 6);
const odd = join(import.meta.dirname, 'odd-worker.mjs');

type Tables = Readonly<Record<'exams' | 'resources' | 'statements' | 'kept_back', unknown[][]>>;

describe.skipIf(missing !== undefined)(
  `the example in Spark${missing ? `: ${missing}` : ''}`,
  () => {
    let folder: string;
    let table: string;
    let python: string;
    let expected: Tables;

    beforeAll(async () => {
      python = await sparkPython();
      folder = mkdtempSync(join(tmpdir(), 'spark-'));
      table = join(folder, 'table.csv');
      await writeTable(table, ROWS);
      expected = single();
    });
    afterAll(() => rmSync(folder, { recursive: true, force: true }));

    /** What one worker of each kind makes, without Spark. */
    function single(): Tables {
      const converted = answersOf(calls.convert, recordsOf(ROWS));
      const exported = answersOf(calls.export, converted).map((line) => JSON.parse(line));
      const flat = answersOf(calls.flat, converted).map((line) => JSON.parse(line));
      const ids = converted.map((line) => JSON.parse(line));
      const good = ids.flatMap(({ quarantine }, at) => (quarantine === undefined ? [at] : []));
      const bad = ids.flatMap(({ quarantine }, at) => (quarantine === undefined ? [] : [at]));
      return {
        exams: good.map((at) => [at + 1, ids[at].exam, converted[at]]),
        resources: good.flatMap((at) =>
          exported[at].result.map(({ type, id, text }: Record<string, string>, place: number) => [
            ...[at + 1, ids[at].exam, place],
            ...[type, id, text],
          ]),
        ),
        statements: good.flatMap((at) =>
          flat[at].result.map((row: object, place: number) => [
            at + 1,
            place,
            ...Object.values(row),
          ]),
        ),
        kept_back: bad.map((at) => [at + 1, ids[at].quarantine.reason, converted[at]]),
      };
    }

    function start(out: string, more: readonly string[] = []): ChildProcess {
      const settings = [
        '--delimiter',
        ';',
        '--master',
        'local[2,20]',
        '--partition-bytes',
        '60000',
      ];
      const argv = [join(examples, 'spark/convert.py'), table, '--mapping', mapping, ...settings];
      const command = ['--program', `${process.execPath} ${program}`];
      return spawn(python, [...argv, '--out', join(folder, out), ...command, ...more], {
        stdio: ['ignore', 'inherit', 'pipe'],
      });
    }

    async function tablesIn(out: string): Promise<Tables> {
      const read = join(folder, `${out}-read`);
      mkdirSync(read);
      const script = join(import.meta.dirname, 'read_tables.py');
      const child = spawn(python, [script, join(folder, out), read], {
        stdio: ['ignore', 'ignore', 'pipe'],
      });
      expect(await ended(child)).toEqual({ code: 0, said: '' });
      const rows = (name: string): unknown[][] =>
        readFileSync(join(read, name), 'utf8')
          .split('\n')
          .slice(0, -1)
          .map((line) => JSON.parse(line));
      return {
        exams: rows('exams'),
        resources: rows('resources'),
        statements: rows('statements'),
        kept_back: rows('kept_back'),
      };
    }

    function expectSame(found: Tables): void {
      expect(found.exams.length + found.kept_back.length).toBe(ROWS);
      for (const name of ['exams', 'resources', 'statements', 'kept_back'] as const) {
        expect(firstDifference(found[name], expected[name]), name).toBeUndefined();
      }
    }

    it('gives the bytes of one worker, and every row once', async () => {
      expect(expected.exams.length).toBeGreaterThan(expected.kept_back.length);
      expect(expected.kept_back.length).toBeGreaterThan(0);
      expect(await ended(start('plain'))).toEqual({ code: 0, said: '' });
      expectSame(await tablesIn('plain'));
    });

    it(`gives them with ${KILLS} workers of Node and ${KILLS} of Python killed`, async () => {
      const child = start('killed', ['--tries', '20']);
      const over = ended(child);
      const random = seeded(5);
      const killed = { node: 0, python: 0 };
      while (killed.node + killed.python < 2 * KILLS && child.exitCode === null) {
        await setTimeout(300 + random.below(900));
        const all = await startedBy(child);
        const isDaemon = ({ command }: { command: string }): boolean =>
          command.includes('pyspark.daemon');
        const daemons = new Set(all.filter(isDaemon).map(({ pid }) => pid));
        const kind = killed.node <= killed.python ? 'node' : 'python';
        const victims = all.filter((one) =>
          kind === 'node'
            ? one.command.includes(`${program} convert`) && !isDaemon(one)
            : isDaemon(one) && daemons.has(one.parent),
        );
        const victim = victims[random.below(Math.max(1, victims.length))];
        // What Python keeps open for the driver alone is not there yet, or no longer.
        if (victim === undefined || !all.some(({ command }) => command.includes('--lines')))
          continue;
        process.kill(victim.pid, 'SIGKILL');
        killed[kind] += 1;
      }
      expect(await over).toEqual({ code: 0, said: '' });
      expect(killed).toEqual({ node: KILLS, python: KILLS });
      expectSame(await tablesIn('killed'));
    });

    it('keeps back a record that ends every worker, and answers all others', async () => {
      const deadly = ['--program', `${process.execPath} ${odd} ${program} K-1234;`];
      expect(await ended(start('deadly', deadly))).toMatchObject({ code: 0 });
      const found = await tablesIn('deadly');
      const mine = found.kept_back.find(([id]) => id === 1234);
      expect(mine?.slice(0, 2)).toEqual([1234, 'internal-fault']);
      expect(JSON.parse(String(mine?.[2])).quarantine.raw).toContain('K-1234;');
      const without = (rows: unknown[][]) => rows.filter(([id]) => id !== 1234);
      for (const name of ['exams', 'resources', 'statements', 'kept_back'] as const) {
        const other = firstDifference(without(found[name]), without(expected[name]));
        expect(other, name).toBeUndefined();
      }
    });

    it('fails where nothing can be answered', async () => {
      const { code } = await ended(
        start('wrong', ['--mapping', join(examples, 'exams/broken-off.json')]),
      );
      expect(code).not.toBe(0);
    });
  },
);
