import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { BulkOptions } from '../../src/convert/bulk/options.ts';
import { temporaryFolder } from '../convert/bulk/folder.ts';
import { killedRun, wholeRun } from '../convert/bulk/killed-run.ts';
import { messyRows } from '../convert/csv/messy-rows.ts';
import { csvMapping } from '../convert/csv/suite.ts';
import { seeded } from '../convert/random.ts';

const ROUNDS = 20;

it(`a run killed at ${ROUNDS} random moments ends, resumed, with the same bytes`, {
  timeout: 1_800_000,
}, async () => {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'in'));
  for (const seed of [1, 2, 3]) {
    writeFileSync(join(folder, 'in', `${seed}.csv`), messyRows(seed, 700).text);
  }
  const options = (out: string): BulkOptions => ({
    mapping: csvMapping,
    inputs: [join(folder, 'in')],
    to: 'bundles',
    out: join(folder, out),
    checkpointEvery: 100,
  });
  const time = await wholeRun(options('whole'));
  const random = seeded(2024);
  let stopped = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const delay = random.below(Math.ceil(time));
    if (await killedRun(options(`killed-${round}`), delay, options('whole').out)) stopped += 1;
  }
  // Some kills come too early or too late to interrupt anything.
  expect(stopped).toBeGreaterThanOrEqual(ROUNDS / 2);
});
