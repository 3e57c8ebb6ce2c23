import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { expect } from 'vitest';
import type { BulkOptions } from '../../../src/convert/bulk/options.ts';
import { checkpointFile } from '../../../src/convert/bulk/output/checkpoint.ts';
import { contents, convert } from './folder.ts';

const child = join(import.meta.dirname, 'child.mjs');

interface Started {
  readonly process: ChildProcess;
  /** Milliseconds from the start of the conversion to its end, or to the end of the process. */
  readonly ended: Promise<number>;
  readonly ready: Promise<void>;
}

function start(options: BulkOptions): Started {
  const process = spawn(globalThis.process.execPath, [child, JSON.stringify(options)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let at = 0;
  const ready = new Promise<void>((resolve) => {
    process.stdout.once('data', () => {
      at = performance.now();
      resolve();
    });
  });
  const ended = new Promise<number>((resolve) => {
    process.once('close', () => resolve(performance.now() - at));
  });
  return { process, ended, ready };
}

/** Time that a run takes which nobody stops, in milliseconds; its results stay in `options.out`. */
export async function wholeRun(options: BulkOptions): Promise<number> {
  const { ended } = start(options);
  return ended;
}

/**
 * Runs until `delay` milliseconds have gone by, kills the process with SIGKILL, and resumes. Returns
 * whether the run was really stopped on its way; the results are then the same as those in `whole`.
 */
export async function killedRun(
  options: BulkOptions,
  delay: number,
  whole: string,
): Promise<boolean> {
  const { process, ended, ready } = start(options);
  await ready;
  await setTimeout(delay);
  process.kill('SIGKILL');
  await ended;
  const stopped = existsSync(join(options.out, checkpointFile));
  const begun = existsSync(options.out);
  const { summary, issues } = await convert({ ...options, resume: begun });
  expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
  expect(summary).toBeDefined();
  expect(contents(options.out)).toEqual(contents(whole));
  return stopped;
}
