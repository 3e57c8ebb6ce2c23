import { createRequire } from 'node:module';

// What this example uses of BullMQ and ioredis, so that the types hold before they are installed.

export interface Connection {
  readonly host: string;
  readonly port: number;
}

export interface Job<Data> {
  readonly id: string;
  readonly data: Data;
}

export interface Counts {
  readonly [state: string]: number;
}

export interface Queue<Data> {
  addBulk(
    jobs: readonly {
      readonly name: string;
      readonly data: Data;
      readonly opts: { readonly jobId: string; readonly attempts: number };
    }[],
  ): Promise<unknown>;
  getJobCounts(...states: readonly string[]): Promise<Counts>;
  close(): Promise<void>;
}

export interface Worker {
  on(event: 'error', listener: (error: Error) => void): unknown;
  close(): Promise<void>;
}

export interface WorkerSettings {
  readonly concurrency: number;
  /** Milliseconds after which a job of a worker that is silent is handed out again. */
  readonly lockDuration: number;
  readonly stalledInterval: number;
  /** How often that may happen to a job before it is set aside as failed. */
  readonly maxStalledCount: number;
}

export interface Redis {
  eval(script: string, keys: number, ...texts: readonly string[]): Promise<unknown>;
  get(key: string): Promise<string | null>;
  lrange(key: string, from: number, to: number): Promise<string[]>;
  quit(): Promise<unknown>;
}

interface Bull {
  readonly Queue: new (name: string, options: { connection: Connection }) => Queue<never>;
  readonly Worker: new (
    name: string,
    work: (job: Job<never>) => Promise<void>,
    options: WorkerSettings & { connection: Connection },
  ) => Worker;
}

const require = createRequire(import.meta.url);

export function openQueue<Data>(name: string, connection: Connection): Queue<Data> {
  const { Queue }: Bull = require('bullmq');
  return new Queue(name, { connection }) as Queue<Data>; // the data are what this example puts in
}

export function openWorker<Data>(
  name: string,
  connection: Connection,
  settings: WorkerSettings,
  work: (job: Job<Data>) => Promise<void>,
): Worker {
  const { Worker }: Bull = require('bullmq');
  return new Worker(name, (job) => work(job as Job<Data>), { ...settings, connection }); // likewise
}

export function openRedis(connection: Connection): Redis {
  const { Redis }: { Redis: new (options: Connection) => Redis } = require('ioredis');
  return new Redis(connection);
}
