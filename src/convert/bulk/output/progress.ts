import type { BulkIo } from '../options.ts';

export interface Progress {
  readonly update: (bytes: number, exams: number) => void;
  readonly end: () => void;
}

/** Milliseconds between two lines: often on a terminal, else once a minute. */
const OFTEN = 200;
const SELDOM = 60_000;

/** Tells how far a run is, its rate and the time left. */
export function progressOf(io: BulkIo, total: number, doneBefore: number): Progress {
  const { progress, now } = io;
  if (progress === undefined) return { update: () => {}, end: () => {} };
  const { isTerminal, write } = progress;
  const start = now();
  let last = start;
  let shown = false;
  return {
    update: (bytes, exams) => {
      const time = now();
      if (time - last < (isTerminal ? OFTEN : SELDOM)) return;
      last = time;
      shown = true;
      const seconds = (time - start) / 1000;
      const line = progressLine({ bytes, total, exams, doneBefore, seconds });
      // The last part clears the rest of the line.
      write(isTerminal ? `\r${progressBar(bytes, total)} ${line}\u001B[K` : `${line}\n`);
    },
    end: () => {
      if (isTerminal && shown) write('\n');
    },
  };
}

export interface ProgressNumbers {
  readonly bytes: number;
  readonly total: number;
  readonly exams: number;
  /** Exams that a resumed run found done. */
  readonly doneBefore: number;
  readonly seconds: number;
}

const WIDTH = 20;

/** `[########............]` */
export function progressBar(bytes: number, total: number): string {
  const done = Math.floor(shareOf(bytes, total) * WIDTH);
  return `[${'#'.repeat(done)}${'.'.repeat(WIDTH - done)}]`;
}

function shareOf(bytes: number, total: number): number {
  return total === 0 ? 1 : Math.min(1, bytes / total);
}

/** `43 %  12000 exams  850/s  2 min 5 s left`. */
export function progressLine({
  bytes,
  total,
  exams,
  doneBefore,
  seconds,
}: ProgressNumbers): string {
  const share = shareOf(bytes, total);
  const rate = seconds > 0 ? Math.round((exams - doneBefore) / seconds) : 0;
  const left = share > 0 ? (seconds / share) * (1 - share) : undefined;
  const parts = [`${Math.floor(share * 100)} %`, `${exams} exams`, `${rate}/s`];
  if (left !== undefined) parts.push(`${timeText(left)} left`);
  return parts.join('  ');
}

function timeText(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole < 60) return `${whole} s`;
  const minutes = Math.floor(whole / 60);
  if (minutes < 60) return `${minutes} min ${whole % 60} s`;
  return `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}
