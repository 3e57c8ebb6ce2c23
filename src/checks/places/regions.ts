import type { Catalogue } from '../../terminology/catalogue.ts';

/** Depth at which a chain of parents is cut off, so that a loop in an adopter's table can not hang. */
const DEEPEST = 30;

/** The region and the regions above it, nearest first. */
export function lineage(catalogue: Catalogue, region: string): readonly string[] {
  const line: string[] = [];
  let at: string | undefined = region;
  while (at !== undefined && line.length < DEEPEST && !line.includes(at)) {
    line.push(at);
    at = catalogue.regions.get(at)?.parent;
  }
  return line;
}

/** Whether a region is another or lies below it. */
export function isWithin(catalogue: Catalogue, region: string, whole: string): boolean {
  return region === whole || lineage(catalogue, region).includes(whole);
}

/** Name of a region for texts; its code where the catalogue does not know it. */
export function regionName(catalogue: Catalogue, region: string): string {
  return catalogue.regions.get(region)?.display ?? region;
}
