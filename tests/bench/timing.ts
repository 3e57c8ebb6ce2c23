/** A name and what is timed under it. */
export type Timed = readonly [name: string, call: () => unknown];

/**
 * Median time of each call in milliseconds. The calls take turns, so that what else the machine does
 * falls on all of them; as many rounds as are timed come before, to warm up.
 */
export function medians(calls: readonly Timed[], rounds: number): Map<string, number> {
  const times = new Map<string, number[]>(calls.map(([name]) => [name, []]));
  for (let round = 0; round < rounds * 2; round++) {
    for (const [name, call] of calls) {
      const start = process.hrtime.bigint();
      call();
      const time = Number(process.hrtime.bigint() - start) / 1e6;
      if (round >= rounds) times.get(name)?.push(time);
    }
  }
  return new Map([...times].map(([name, list]) => [name, middle(list)]));
}

export function middle(times: readonly number[]): number {
  return [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;
}

export function row(name: string, milliseconds: number, unit: number, what: string): string {
  const ratio = (milliseconds / unit).toFixed(2).padStart(10);
  return `${name.padEnd(46)} ${milliseconds.toFixed(3).padStart(11)} ms  ${ratio} x ${what}`;
}
