/** Choices that follow from a seed alone, on every machine. */
export interface Random {
  /** From which all of it follows. */
  readonly seed: number;
  /** A whole number from `low` to `high`, both included. */
  int(low: number, high: number): number;
  /** True in this share of cases, 0 to 1. */
  chance(share: number): boolean;
  /** One of a list that is not empty. */
  pick<T>(list: readonly T[]): T;
  /** Up to `count` different entries, in the order of the list. */
  some<T>(list: readonly T[], count: number): T[];
  /** All entries in another order. */
  shuffled<T>(list: readonly T[]): T[];
}

/**
 * A generator of 32-bit state that steps by the golden ratio and mixes by multiplication and shifts.
 * Good enough to spread test data; of no use where numbers must be hard to guess.
 */
export function createRandom(seed: number): Random {
  // Both halves of a large seed count.
  let state = (Math.trunc(seed) ^ Math.trunc(seed / 2 ** 32)) | 0;
  const share = (): number => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32;
  };
  const int = (low: number, high: number): number => low + Math.floor(share() * (high - low + 1));
  const shuffled = <T>(list: readonly T[]): T[] =>
    list
      .map((entry) => ({ entry, rank: share() }))
      .sort((a, b) => a.rank - b.rank)
      .map(({ entry }) => entry);
  return {
    seed,
    int,
    chance: (wanted) => share() < wanted,
    pick: (list) => {
      const entry = list[int(0, list.length - 1)];
      if (entry === undefined) throw new TypeError('cannot pick from an empty list');
      return entry;
    },
    some: (list, count) => {
      const kept = new Set(shuffled(list.map((_, at) => at)).slice(0, count));
      return list.filter((_, at) => kept.has(at));
    },
    shuffled,
  };
}
