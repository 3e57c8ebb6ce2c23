import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openQueue, openRedis, type Queue } from '../../examples/queue/bull.ts';
import { queueName, repeatsKey, resultsKey } from '../../examples/queue/settings.ts';
import { messyMessages } from '../convert/hl7v2/messy-messages.ts';
import { hl7v2Suite } from '../convert/hl7v2/suite.ts';
import { drained } from './drained.ts';
import {
  add,
  bundles,
  ended,
  type Program,
  type Redis,
  startRedis,
  startWorker,
  whyNoRedis,
} from './programs.ts';

const missing = whyNoRedis();
const RECORDS = 12;

/**
 * Stands before the program of the example: what it is told of a record it does first.
 * The words are those of environment variables, so that each test has its own.
 */
const oddConverter = `
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
const { SLOW_MS, DEADLY, REAL } = process.env;
const child = spawn(process.execPath, [REAL, ...process.argv.slice(2)], { stdio: ['pipe', 'inherit', 'inherit'] });
child.on('close', () => process.exit());
const input = createInterface({ input: process.stdin });
for await (const line of input) {
  if (DEADLY && line.includes(DEADLY)) { child.kill('SIGKILL'); process.exit(1); }
  if (SLOW_MS) await new Promise((resolve) => setTimeout(resolve, Number(SLOW_MS)));
  child.stdin.write(line + '\\n');
}
child.stdin.end();
`;

let folder: string;
let mapping: string;
let file: string;
let redis: Redis;
let queue: Queue<unknown>;
const workers: Program[] = [];

beforeEach(async () => {
  if (missing !== undefined) return;
  folder = mkdtempSync(join(tmpdir(), 'queue-'));
  mapping = join(folder, 'mapping.json');
  file = join(folder, 'messages.hl7');
  writeFileSync(mapping, JSON.stringify(hl7v2Suite.mapping));
  writeFileSync(file, messyMessages(1, RECORDS).text);
  writeFileSync(join(folder, 'odd.mjs'), oddConverter);
  redis = await startRedis();
  queue = openQueue(queueName, { host: '127.0.0.1', port: redis.port });
});
afterEach(async () => {
  if (missing !== undefined) return;
  for (const { child } of workers.splice(0)) await ended(child, 'SIGKILL');
  await queue.close();
  await redis.stop();
  rmSync(folder, { recursive: true, force: true });
});

function settings(own: Readonly<Record<string, string>> = {}): Record<string, string> {
  return { REDIS_PORT: String(redis.port), LOCK_MS: '1000', MAX_STALLED: '100', ...own };
}

async function worker(own: Readonly<Record<string, string>> = {}): Promise<Program> {
  const started = await startWorker(mapping, settings(own));
  workers.push(started);
  return started;
}

/** Settings of a worker whose converter is slow or dies of a word. */
function odd(words: Readonly<Record<string, string>>): Record<string, string> {
  return { PROGRAM: join(folder, 'odd.mjs'), REAL: join(bundles, 'convert.mjs'), ...words };
}

/** How many answers there are, of how many records, and how many came twice and were dropped. */
async function answers(): Promise<{ answers: number; records: number; repeats: number }> {
  const client = openRedis({ host: '127.0.0.1', port: redis.port });
  const lines = await client.lrange(resultsKey, 0, -1);
  const repeats = Number(await client.get(repeatsKey));
  await client.quit();
  const ids = lines.map((line) => /^\{"id":"(r[0-9a-f]{64})"/.exec(line)?.[1]);
  return { answers: lines.length, records: new Set(ids).size, repeats };
}

async function added(): Promise<number> {
  await add([mapping, file], settings());
  const { waiting = 0, active = 0, completed = 0 } = await queue.getJobCounts();
  return waiting + active + completed;
}

describe.skipIf(missing !== undefined)(
  missing === undefined ? 'the queue' : `the queue: ${missing}`,
  () => {
    it('goes on where Redis was killed and started again', async () => {
      await worker({ CONCURRENCY: '1', ...odd({ SLOW_MS: '150' }) });
      const records = await added();
      await redis.restart();
      await setTimeout(500);
      await redis.restart();
      expect(await drained(queue)).toEqual({ completed: records, failed: 0 });
      expect(await answers()).toMatchObject({ answers: records, records });
    });

    it('lets a record take longer than its lock, which its worker renews', async () => {
      await worker({ CONCURRENCY: '2', ...odd({ SLOW_MS: '1500' }) });
      await worker({ CONCURRENCY: '2', ...odd({ SLOW_MS: '1500' }) });
      const records = await added();
      expect(await drained(queue)).toEqual({ completed: records, failed: 0 });
      expect(await answers()).toEqual({ answers: records, records, repeats: 0 });
    });

    it('answers a record once whose worker was away longer than its lock', async () => {
      const slow = await worker({ CONCURRENCY: '1', ...odd({ SLOW_MS: '400' }) });
      const records = await added();
      while (((await queue.getJobCounts('active')).active ?? 0) === 0) await setTimeout(5);
      slow.child.kill('SIGSTOP');
      await worker({ CONCURRENCY: '1' });
      await drained(queue);
      slow.child.kill('SIGCONT');
      while ((await answers()).repeats === 0) await setTimeout(50);
      expect(await drained(queue)).toEqual({ completed: records, failed: 0 });
      expect(await answers()).toEqual({ answers: records, records, repeats: 1 });
    });

    it('sets a record aside that ends every worker, and answers all others', async () => {
      const records = await added();
      const own = { CONCURRENCY: '1', MAX_STALLED: '2', ...odd({ DEADLY: 'H-5^' }) };
      // As a supervisor would: whenever a worker has ended, the next one is started.
      let isOver = false;
      const supervised = (async () => {
        while (!isOver) {
          const { child } = await worker(own);
          while (child.exitCode === null && !isOver) await setTimeout(50);
        }
      })();
      const counts = await drained(queue);
      isOver = true;
      await supervised;
      expect(counts).toEqual({ completed: records - 1, failed: 1 });
      expect(await answers()).toEqual({ answers: records - 1, records: records - 1, repeats: 0 });
    });
  },
);
