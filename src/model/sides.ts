import type { Side } from './primitive.ts';

export type OneSide = 'right' | 'left';

export const oneSides: readonly OneSide[] = ['right', 'left'];

/** Whether a statement made of `side` speaks of this side too. One without a side speaks of both. */
export function coversSide(side: Side | undefined, wanted: OneSide): boolean {
  if (side === undefined || side === 'both' || side === wanted) return true;
  return side === `${wanted}-of-midline`;
}

/** Whether two statements can be about the same place, as far as their sides tell. */
export function sidesOverlap(a: Side | undefined, b: Side | undefined): boolean {
  if (a === undefined || b === undefined || a === b) return true;
  if (a === 'midline' || b === 'midline') return false;
  return oneSides.some((side) => coversSide(a, side) && coversSide(b, side));
}
