import type { Side } from '../../model/primitive.ts';

export type OneSide = 'right' | 'left';

export const oneSides: readonly OneSide[] = ['right', 'left'];

export function otherSide(side: OneSide): OneSide {
  return side === 'right' ? 'left' : 'right';
}

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

/** `on the left`, `on both sides`, for texts; empty where no side was said. */
export function sideText(side: Side | undefined): string {
  if (side === undefined) return '';
  if (side === 'both') return 'on both sides';
  if (side === 'midline') return 'in the midline';
  if (side === 'right-of-midline') return 'right of the midline';
  if (side === 'left-of-midline') return 'left of the midline';
  return `on the ${side}`;
}
