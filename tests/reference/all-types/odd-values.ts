import { oddContained } from './odd-values/contained.ts';
import { oddEveryResource } from './odd-values/every-resource.ts';
import { oddExtensions } from './odd-values/extensions.ts';
import { oddFiguresAndTimes } from './odd-values/figures-and-times.ts';
import { oddNamesAndCodes } from './odd-values/names-and-codes.ts';
import { oddNarratives } from './odd-values/narratives.ts';
import { oddPrimitives } from './odd-values/primitives.ts';
import { oddReferencesAndOthers } from './odd-values/references-and-others.ts';
import type { NamedFault } from './places.ts';

/**
 * Odd forms of values and of what every resource has, sound ones among them. The cases follow from
 * their order.
 */
export const oddValues: readonly NamedFault[] = [
  ...oddPrimitives,
  ...oddFiguresAndTimes,
  ...oddNamesAndCodes,
  ...oddReferencesAndOthers,
  ...oddEveryResource,
  ...oddNarratives,
  ...oddContained,
  ...oddExtensions,
];
