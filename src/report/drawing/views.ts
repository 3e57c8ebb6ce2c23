import { deep, neck } from './deep-views.ts';
import { front, profile } from './face-views.ts';
import { ear, eye, nose } from './organ-views.ts';
import type { View } from './view.ts';

/** Every view, row by row as they stand; what is seen from the side stands right and left of the rest. */
export const views: readonly View[] = [front, profile, deep, neck, eye, ear, nose];

/** Columns of the drawing: a side of the patient, or the middle and places without a side. */
export type Column = 'right' | 'left' | 'middle';

const drawn: ReadonlySet<string> = new Set(
  views.flatMap(({ areas, from, width }) =>
    areas.flatMap(({ region, x }) =>
      from === 'front' && x === width / 2
        ? [`${region}/middle`]
        : [`${region}/right`, `${region}/left`],
    ),
  ),
);

/**
 * Whether a region has a place in a view on that side. What has none, as a group, a function, or a
 * paired place without a side, is told beside the views.
 */
export function isDrawn(region: string, column: Column): boolean {
  return drawn.has(`${region}/${column}`);
}
