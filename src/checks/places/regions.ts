import type { Catalogue } from '../../terminology/catalogue.ts';

/** Depth at which a chain of parents is cut off, so that a loop in an adopter's table cannot hang. */
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

const members = new WeakMap<Catalogue, ReadonlyMap<string, readonly string[]>>();

/** The regions right below a region. */
export function membersOf(catalogue: Catalogue, region: string): readonly string[] {
  let known = members.get(catalogue);
  if (known === undefined) {
    const below = new Map<string, string[]>();
    for (const { code, parent } of catalogue.regions.values()) {
      if (parent === undefined) continue;
      const there = below.get(parent);
      if (there === undefined) below.set(parent, [code]);
      else there.push(code);
    }
    members.set(catalogue, below);
    known = below;
  }
  return known.get(region) ?? [];
}
