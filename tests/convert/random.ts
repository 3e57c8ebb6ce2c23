/** Numbers that a seed fixes: the same seed gives the same sequence on every machine. */
export interface Random {
  /** From 0 to below `count`. */
  readonly below: (count: number) => number;
  readonly chance: (part: number) => boolean;
  readonly pick: <Item>(items: readonly [Item, ...Item[]]) => Item;
}

/** The generator "mulberry32" (public domain), 32 bits of state. */
export function seeded(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const below = (count: number): number => Math.floor(next() * count);
  return {
    below,
    chance: (part) => next() < part,
    pick: (items) => items[below(items.length)] ?? items[0],
  };
}
