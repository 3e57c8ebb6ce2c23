import { Worker } from 'node:worker_threads';
import type { accept } from './accept.ts';

type Judged = Awaited<ReturnType<typeof accept>>;

/** What the thread says: a question for the bundle stored of an exam, or its result. */
type Told = { readonly exam: string; readonly judged?: never } | { readonly judged: Judged };

export interface AcceptThread {
  /**
   * Works off one exam after the other. `stored` gives the bundle kept of an exam, and `done` runs
   * before the next turn, so that two versions of one exam cannot overtake each other.
   * @throws Busy when too many wait, or when this one took too long
   */
  accept<Result>(
    text: string,
    stored: (exam: string) => string | undefined,
    done: (judged: Judged) => Result,
  ): Promise<Result>;
  stop(): Promise<void>;
}

/** Thrown where the client should come again later. */
export class Busy extends Error {}

const LONGEST_QUEUE = 100;

/** The exam that the thread works on. */
interface Job {
  readonly stored: (exam: string) => string | undefined;
  readonly resolve: (judged: Judged) => void;
  readonly reject: (error: Busy) => void;
}

/** @param longest how long one exam may take, in milliseconds */
export function startAcceptThread(longest: number): AcceptThread {
  let worker: Worker | undefined;
  let job: Job | undefined;
  let waiting = 0;
  let last: Promise<unknown> = Promise.resolve();

  const started = (): Worker => {
    // Both threads are bundled, each to a file of its own, before the example starts.
    const thread = new Worker(new URL('./accept-worker.mjs', import.meta.url));
    thread.on('message', (told: Told) => {
      if (told.judged === undefined) thread.postMessage({ stored: job?.stored(told.exam) });
      else job?.resolve(told.judged);
    });
    thread.on('error', fail);
    thread.on('exit', fail);
    return thread;
  };

  /** The state of the thread is not known any more, so the next exam gets a new one. */
  const fail = (): void => {
    void worker?.terminate();
    worker = undefined;
    job?.reject(new Busy());
  };

  const judge = async (text: string, stored: Job['stored']): Promise<Judged> => {
    worker ??= started();
    const timer = setTimeout(fail, longest);
    try {
      return await new Promise<Judged>((resolve, reject) => {
        job = { stored, resolve, reject };
        worker?.postMessage({ text });
      });
    } finally {
      clearTimeout(timer);
      job = undefined;
    }
  };

  return {
    accept: async (text, stored, done) => {
      if (waiting >= LONGEST_QUEUE) throw new Busy();
      waiting += 1;
      const turn = last.then(async () => done(await judge(text, stored)));
      last = turn.catch(() => undefined);
      try {
        return await turn;
      } finally {
        waiting -= 1;
      }
    },
    stop: async () => {
      await last;
      await worker?.terminate();
    },
  };
}
