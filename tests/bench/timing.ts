import { readFileSync } from 'node:fs';

/** A name and what is timed under it. */
export type Timed = readonly [name: string, call: () => unknown];

/**
 * Median processor time of each call in milliseconds: what else the machine does leaves it as it is,
 * which the time of the clock does not. The calls take turns; as many rounds as are timed come
 * before, to warm up.
 */
export function medians(calls: readonly Timed[], rounds: number): Map<string, number> {
  const times = new Map<string, number[]>(calls.map(([name]) => [name, []]));
  for (let round = 0; round < rounds * 2; round++) {
    for (const [name, call] of calls) {
      const start = process.cpuUsage();
      call();
      const { user, system } = process.cpuUsage(start);
      if (round >= rounds) times.get(name)?.push((user + system) / 1000);
    }
  }
  return new Map([...times].map(([name, list]) => [name, middle(list)]));
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
