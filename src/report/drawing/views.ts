import { deep, neck } from './deep-views.ts';
import { front, profile } from './face-views.ts';
import { ear, eye, nose } from './organ-views.ts';
import type { View } from './view.ts';

/** Every view, row by row as they stand; what is seen from the side stands right and left of the rest. */
export const views: readonly View[] = [front, profile, deep, neck, eye, ear, nose];

const drawn: ReadonlySet<string> = new Set(
  views.flatMap(({ areas }) => areas.map(({ region }) => region)),
);

/** Whether a region has a place in a view. What has none, as a group or a function, is told beside them. */
export function isDrawn(region: string): boolean {
  return drawn.has(region);
}
