import { Worker } from 'node:worker_threads';
import type { RawUnit } from '../record/record.ts';
import type { UnitOutcome } from './convert-batch.ts';
import type { ConvertSettings } from './options.ts';

/** Converts batches, several at a time. Answers may come in any order. */
export interface Pool {
  /** Units to be sent at a time. */
  readonly batch: number;
  /** Batches to be sent before the answer to the first is waited for. */
  readonly ahead: number;
  readonly convert: (units: readonly RawUnit[]) => Promise<readonly UnitOutcome[]>;
  readonly close: () => Promise<void>;
}

/**
 * A pool of this thread alone. Its batches are small: what is made is written before the collector
 * takes it for long-lived, and memory stays at what the code itself needs.
 */
export function localPool(convert: (units: readonly RawUnit[]) => UnitOutcome[]): Pool {
  return {
    batch: 8,
    ahead: 0,
    convert: async (units) => convert(units),
    close: async () => {},
  };
}

/** What a worker thread runs: the built file beside this one. */
export const builtWorker: URL = new URL('./worker.js', import.meta.url);

interface Waiting {
  readonly resolve: (outcomes: readonly UnitOutcome[]) => void;
  readonly reject: (error: unknown) => void;
}

interface Answer {
  readonly batch: number;
  readonly outcomes: readonly UnitOutcome[];
}

/** A pool of worker threads. A worker that dies makes its batches fail; nothing is repeated in silence. */
export function workerPool(jobs: number, settings: ConvertSettings, entry: URL): Pool {
  const waiting = new Map<number, Waiting>();
  let failure: unknown;
  const fail = (error: unknown): void => {
    failure = error;
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
  };
  const workers = Array.from({ length: jobs }, () => {
    const worker = new Worker(entry, { workerData: settings });
    worker.on('message', ({ batch, outcomes }: Answer) => {
      waiting.get(batch)?.resolve(outcomes);
      waiting.delete(batch);
    });
    worker.on('error', fail);
    worker.on('exit', (code) => {
      if (code !== 0) fail(new Error(`a worker thread ended with code ${code}`));
    });
    return worker;
  });
  let batch = 0;
  return {
    batch: 50,
    ahead: jobs * 2,
    convert: (units) =>
      new Promise((resolve, reject) => {
        if (failure !== undefined) {
          reject(failure);
          return;
        }
        batch += 1;
        waiting.set(batch, { resolve, reject });
        workers[batch % jobs]?.postMessage({ batch, units });
      }),
    close: async () => {
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}
