import { parentPort, workerData } from 'node:worker_threads';
import type { RawUnit } from '../record/record.ts';
import { createConverter } from './convert-batch.ts';
import type { ConvertSettings } from './options.ts';

/** A batch for a worker, and its answer, told apart by a number. */
export interface WorkerTask {
  readonly batch: number;
  readonly units: readonly RawUnit[];
}

// The pool starts this file with the settings as its data.
const settings: ConvertSettings = workerData;
const { convert } = await createConverter(settings);

parentPort?.on('message', ({ batch, units }: WorkerTask) => {
  parentPort?.postMessage({ batch, outcomes: convert?.(units) ?? [] });
});
