import { findingsAndRegions } from './told-by-kind/findings-and-regions.ts';
import { measuresAndScales } from './told-by-kind/measures-and-scales.ts';
import { notesAndImages } from './told-by-kind/notes-and-images.ts';
import { symptoms } from './told-by-kind/symptoms.ts';
import { tests } from './told-by-kind/tests.ts';
import type { ToldByKind } from './told-by-kind/told.ts';

/** A new kind does not compile without its place on the page. */
export const toldByKind: ToldByKind = {
  ...findingsAndRegions,
  ...tests,
  ...measuresAndScales,
  ...symptoms,
  ...notesAndImages,
};
