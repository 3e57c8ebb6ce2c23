import { setTimeout } from 'node:timers/promises';
import type { Queue } from '../../examples/queue/bull.ts';

/** Waits until nothing is left to do; gives the jobs that are done and those that have failed. */
export async function drained(
  queue: Queue<unknown>,
): Promise<{ completed?: number; failed?: number }> {
  for (;;) {
    const { completed = 0, failed = 0, ...open } = await queue.getJobCounts();
    if (Object.values(open).every((count) => count === 0)) return { completed, failed };
    await setTimeout(100);
  }
}
