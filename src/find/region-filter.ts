import type { Catalogue } from '../terminology/catalogue.ts';
import type { Entry, FindKind } from './phrases.ts';

type Place = (entry: Entry) => boolean;

/**
 * Whether an entry can be said of a region: a region is it or below it; a sign, measure, point or scale
 * belongs to it, to a part of it or to what it is part of; a symptom to its section; a reason to all.
 * An unknown region has nothing.
 */
export function regionFilter(region: string, catalogue: Catalogue): Place {
  const { regions } = catalogue;
  const wanted = regions.get(region);
  if (wanted === undefined) return () => false;
  const above = waysUp(region, catalogue);
  const touches = (other: string): boolean =>
    above.has(other) || waysUp(other, catalogue).has(region);
  const byKind: Readonly<Record<FindKind, Place>> = {
    region: ({ code }) => waysUp(code, catalogue).has(region),
    sign: ({ code }) => {
      const of = catalogue.findings.get(code)?.regions ?? [];
      return of.length === 0 || of.some(touches);
    },
    point: ({ code }) => touches(catalogue.testPoints.get(code)?.region ?? ''),
    measure: ({ code }) => touches(catalogue.measures.get(code)?.region ?? ''),
    scale: ({ code }) => touches(catalogue.scales.get(code)?.region ?? ''),
    symptom: ({ code }) => catalogue.symptoms.get(code)?.section === wanted.section,
    reason: () => true,
  };
  return (entry) => byKind[entry.kind](entry);
}

/** A region and all above it. */
function waysUp(region: string, { regions }: Catalogue): ReadonlySet<string> {
  const way = new Set<string>();
  let at: string | undefined = region;
  while (at !== undefined && !way.has(at)) {
    way.add(at);
    at = regions.get(at)?.parent;
  }
  return way;
}
