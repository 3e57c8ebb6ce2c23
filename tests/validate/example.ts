import { readFileSync } from 'node:fs';

/** A published R4 example, parsed anew for each caller. */
export function example(name: string): Record<string, unknown> {
  const file = new URL(`published/${name}.json`, import.meta.url);
  return JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>;
}

/** A copy of `base` with the value at a path replaced, or taken away where `value` is `undefined`. */
export function changed<T>(base: T, path: readonly (string | number)[], value: unknown): T {
  const copy = structuredClone(base);
  let holder = copy as Record<string | number, unknown>;
  for (const step of path.slice(0, -1)) holder = holder[step] as typeof holder;
  const last = path.at(-1) ?? '';
  if (value === undefined) delete holder[last];
  else holder[last] = value;
  return copy;
}
