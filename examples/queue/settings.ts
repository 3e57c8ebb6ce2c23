import type { Connection } from './bull.ts';

export const queueName = 'exams-to-convert';
/** Answers as lines of NDJSON, in a Redis list: whoever needs them takes them from there. */
export const resultsKey = 'converted-exams';
/** Records that have an answer, so that one that is done twice is answered once. */
export const doneKey = 'converted-exams:done';
/** How many answers came a second time and were dropped. */
export const repeatsKey = 'converted-exams:repeats';

/** One record as a job: a line for `convert --lines` without its id. */
export interface RecordData {
  readonly raw: string;
  readonly header?: readonly string[];
  readonly lines?: readonly number[];
  readonly at?: object;
}

export function text(name: string, otherwise: string): string {
  const value = process.env[name];
  return value === undefined || value === '' ? otherwise : value;
}

export function whole(name: string, otherwise: number): number {
  const value = Number(text(name, String(otherwise)));
  if (!Number.isSafeInteger(value) || value < 1) {
    throw new TypeError(`cannot start: expected a whole number from 1 in ${name}`);
  }
  return value;
}

export function connection(): Connection {
  return { host: text('REDIS_HOST', '127.0.0.1'), port: whole('REDIS_PORT', 6379) };
}
