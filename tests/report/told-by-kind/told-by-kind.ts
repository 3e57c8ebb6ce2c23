import { findingsAndRegions } from './findings-and-regions.ts';
import { measuresAndScales } from './measures-and-scales.ts';
import { notesAndImages } from './notes-and-images.ts';
import { symptoms } from './symptoms.ts';
import { tests } from './tests.ts';
import type { ToldByKind } from './told.ts';

/** A new kind does not compile without its place on the page. */
export const toldByKind: ToldByKind = {
  ...findingsAndRegions,
  ...tests,
  ...measuresAndScales,
  ...symptoms,
  ...notesAndImages,
};
