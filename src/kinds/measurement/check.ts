import { compareFigures } from '../../checks/compare/compare-figures.ts';
import type { Comparison } from '../../checks/compare/comparison.ts';
import { cover, document, markMethods, sidesIn } from '../../checks/coverage/marks.ts';
import type { KindCheck } from '../facets/check.ts';
import { trackingOfFinding } from '../finding/check.ts';
import type { Measurement } from './statement.ts';

export const measurementCheck: KindCheck<Measurement> = {
  cover: (measurement, marker) => {
    const { measure, region, side, value, methods = [] } = measurement;
    const sides = sidesIn(marker, region, side);
    for (const one of sides) {
      const place = { kind: 'measure', code: measure, side: one } as const;
      if (value !== undefined) cover(marker, place, measurement);
      else document(marker, place, measurement);
    }
    if (value === undefined) return;
    markMethods(marker, region, sides, measurement, ['measurement', ...methods]);
  },
  comparison: {
    // Compared under the same conditions only: pupils in the dark are not those in the light.
    variants: ({ conditions = [] }) => [{ conditions: [...conditions].sort().join(' ') }],
    tracking: ({ about }, index) => trackingOfFinding(about, index),
    change: (now, before, { catalogue, skinChange }) =>
      compareFigures(now, before, catalogue, skinChange),
  },
};

/** Comparisons of measured figures. */
export function measuredIn(comparisons: readonly Comparison[]): readonly Comparison[] {
  return comparisons.filter(({ kind }) => kind === 'measurement');
}
