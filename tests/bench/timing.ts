import { readFileSync } from 'node:fs';

/** A name and what is timed under it. */
export type Timed = readonly [name: string, call: () => unknown];

/**
 * Processor times of each call in milliseconds, a list for each: what else the machine does leaves them
 * as they are, which the time of the clock does not. The calls take turns; as many rounds as are timed
 * come before, to warm up.
 */
export function takeTurns(calls: readonly (() => unknown)[], rounds: number): number[][] {
  const times = calls.map((): number[] => []);
  for (let round = 0; round < rounds * 2; round++) {
    calls.forEach((call, at) => {
      const start = process.cpuUsage();
      call();
      const { user, system } = process.cpuUsage(start);
      if (round >= rounds) times[at]?.push((user + system) / 1000);
    });
  }
  return times;
}

/** Median of the times of {@link takeTurns}, by name. */
export function medians(calls: readonly Timed[], rounds: number): Map<string, number> {
  const times = takeTurns(
    calls.map(([, call]) => call),
    rounds,
  );
  return new Map(calls.map(([name], at) => [name, middle(times[at] ?? [])]));
}

export function middle(times: readonly number[]): number {
  return [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;
}

/** Ticks of the processor clock of Linux are of a hundredth of a second, whatever the machine. */
const TICK = 10;

/**
 * Processor time in milliseconds that another process has used so far, on Linux; elsewhere nothing.
 * @see proc(5), /proc/pid/stat: utime and stime are fields 14 and 15
 */
export function processorTimeOf(pid: number): number | undefined {
  if (process.platform !== 'linux') return undefined;
  const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
  // The second field is a name in brackets, which may hold spaces.
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  return (Number(fields[11]) + Number(fields[12])) * TICK;
}

export function row(name: string, milliseconds: number, unit: number, what: string): string {
  const ratio = (milliseconds / unit).toFixed(2).padStart(10);
  return `${name.padEnd(46)} ${milliseconds.toFixed(3).padStart(11)} ms  ${ratio} x ${what}`;
}
