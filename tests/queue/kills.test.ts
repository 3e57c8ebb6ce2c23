import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openQueue, openRedis, type Queue } from '../../examples/queue/bull.ts';
import { queueName, repeatsKey, resultsKey } from '../../examples/queue/settings.ts';
import { convertLines, cutFiles } from '../../src/convert/bulk/index.ts';
import { messyMessages } from '../convert/hl7v2/messy-messages.ts';
import { hl7v2Suite } from '../convert/hl7v2/suite.ts';
import { seeded } from '../convert/random.ts';
import { drained } from './drained.ts';
import {
  add,
  ended,
  type Program,
  type Redis,
  startRedis,
  startWorker,
  whyNoRedis,
} from './programs.ts';

const missing = whyNoRedis();
const KILLS = 20;
const PER_ROUND = 40;
const WORKERS = 2;

const folder = mkdtempSync(join(tmpdir(), 'queue-'));
const mapping = join(folder, 'mapping.json');
const files = Array.from({ length: KILLS }, (_, round) => join(folder, `${round}.hl7`));

let redis: Redis;
const workers: Program[] = [];

beforeAll(async () => {
  if (missing !== undefined) return;
  redis = await startRedis();
  writeFileSync(mapping, JSON.stringify(hl7v2Suite.mapping));
  for (const [round, file] of files.entries()) {
    writeFileSync(file, messyMessages(round + 1, PER_ROUND).text);
  }
});
afterAll(async () => {
  for (const { child } of workers) await ended(child, 'SIGKILL');
  await redis?.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** What a converter that nobody disturbs answers to all records, without their ids, sorted. */
async function undisturbed(): Promise<string[]> {
  const units: string[] = [];
  for await (const found of cutFiles(files, hl7v2Suite.mapping)) {
    if ('problem' in found) throw new Error(found.problem.message);
    units.push(`${JSON.stringify(found.unit)}\n`);
  }
  const lines: string[] = [];
  const bytes = (async function* () {
    yield Buffer.from(units.join(''));
  })();
  await convertLines(bytes, { mapping: hl7v2Suite.mapping }, async (line) => {
    lines.push(line.trimEnd());
  });
  expect(lines.length).toBe(units.length);
  return lines.sort();
}

/** Waits until a record is being converted; gives false where `added` is over and nothing is left to do. */
async function isAtWork(queue: Queue<unknown>, added: Promise<unknown>): Promise<boolean> {
  let isAdding = true;
  void added.then(() => {
    isAdding = false;
  });
  for (;;) {
    const wasAdding = isAdding;
    const { active = 0, waiting = 0 } = await queue.getJobCounts('active', 'waiting');
    if (active > 0) return true;
    if (!wasAdding && waiting === 0) return false;
    await setTimeout(1);
  }
}

const title = `loses no record and answers none twice, its workers killed ${KILLS} times`;

describe('the queue example', () => {
  it.skipIf(missing !== undefined)(
    missing === undefined ? title : `${title}: ${missing}`,
    async () => {
      const expected = await undisturbed();
      const settings = { REDIS_PORT: String(redis.port), LOCK_MS: '1000', MAX_STALLED: '100' };
      const connection = { host: '127.0.0.1', port: redis.port };
      const queue = openQueue<unknown>(queueName, connection);
      const client = openRedis(connection);
      const random = seeded(20250901);
      for (let count = 0; count < WORKERS; count++)
        workers.push(await startWorker(mapping, settings));

      let killedAtWork = 0;
      for (const [round, file] of files.entries()) {
        // Whoever adds is killed too, now and then, and adds it all again.
        if (random.chance(1 / 4)) await add([mapping, file], settings, random.below(400));
        const adding = add([mapping, file], settings);
        // Half of the kills come at any moment, half while records are being converted.
        if (random.chance(1 / 2)) await setTimeout(random.below(800));
        if (await isAtWork(queue, adding)) killedAtWork += 1;
        await workers[round % WORKERS]?.kill();
        workers[round % WORKERS] = await startWorker(mapping, settings);
        await adding;
      }
      // What is in the queue already is not taken again.
      await add([mapping, ...files], settings);
      const counts = await drained(queue);

      const answers = await client.lrange(resultsKey, 0, -1);
      const repeats = Number(await client.get(repeatsKey));
      await queue.close();
      await client.quit();
      const withId = answers.map((line) => /^\{"id":"(r[0-9a-f]{64})",(.*)$/.exec(line));
      const ids = new Set(withId.map((found) => found?.[1]));
      expect(counts).toEqual({ completed: expected.length, failed: 0 });
      expect({ answers: answers.length, ids: ids.size }).toEqual({
        answers: expected.length,
        ids: expected.length,
      });
      expect(withId.map((found) => `{${found?.[2]}`).sort()).toEqual(expected);
      // Kills at idle moments would prove nothing.
      expect(killedAtWork).toBeGreaterThanOrEqual(5);
      console.log(
        `${expected.length} records in, ${answers.length} answers out; ` +
          `${killedAtWork} of ${KILLS} kills while records were being converted, ${repeats} done twice and answered once`,
      );
    },
  );
});
