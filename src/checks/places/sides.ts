import type { Side } from '../../model/primitive.ts';
import type { OneSide } from '../../model/sides.ts';

export { coversSide, type OneSide, oneSides, sidesOverlap } from '../../model/sides.ts';

export function otherSide(side: OneSide): OneSide {
  return side === 'right' ? 'left' : 'right';
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
