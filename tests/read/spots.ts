export type Json = Record<string | number, unknown>;

/** A property or list entry, and where it stands. */
export interface Spot {
  readonly holder: Json;
  readonly step: string | number;
  readonly path: readonly (string | number)[];
}

/** Every property and list entry, the outer before the inner. */
export function* spots(
  holder: Json,
  path: readonly (string | number)[] = [],
): Generator<Spot, void, undefined> {
  const steps = Array.isArray(holder) ? [...holder.keys()] : Object.keys(holder);
  for (const step of steps) {
    const value = holder[step];
    yield { holder, step, path: [...path, step] };
    if (typeof value === 'object' && value !== null) yield* spots(value as Json, [...path, step]);
  }
}
