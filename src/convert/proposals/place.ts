import type { Code } from '../../model/primitive.ts';
import { isWithin } from '../../model/rules/places.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { type Clause, isSign } from './clauses.ts';
import type { Item } from './items.ts';
import { meet } from './sides.ts';

/** A region, and what says it: the sentence, what stands above it, or the nature of the sign. */
export interface FoundRegion {
  readonly region: Code;
  readonly by: 'sentence' | 'above' | 'sign';
}

/** Where a sign is, by its sentence, its heading or its nature; nothing where that is not certain. */
export function regionOf(
  sign: Item,
  places: readonly Code[],
  clause: Clause,
  heading: Code | undefined,
  catalogue: Catalogue,
): FoundRegion | undefined {
  const named = regionsBeside(sign, clause);
  const [first, ...more] = named;
  if (first !== undefined) {
    const found = narrowed(places, first, catalogue);
    const isOne = more.every((codes) => sameOne(found, narrowed(places, codes, catalogue)));
    if (found !== undefined && isOne) return { region: found, by: 'sentence' };
    return undefined;
  }
  const below = heading === undefined ? undefined : narrowed(places, [heading], catalogue);
  if (below !== undefined) return { region: below, by: 'above' };
  // Below the heading of another part of the body the word may mean something else.
  if (heading !== undefined && !places.some((place) => meet(place, heading, catalogue))) {
    return undefined;
  }
  const [only, other] = places;
  if (other !== undefined || !isSingle(only, catalogue)) return undefined;
  return { region: only, by: 'sign' };
}

function sameOne(one: Code | undefined, other: Code | undefined): boolean {
  return one !== undefined && one === other;
}

/** Regions named with a sign: of a clause with one sign all, otherwise those between it and the next. */
function regionsBeside(sign: Item, { items }: Clause): (readonly Code[])[] {
  const codesIn = (part: readonly Item[]): (readonly Code[])[] =>
    part.flatMap((item) => (item.is === 'region' ? [item.codes] : []));
  if (items.filter(isSign).length === 1) return codesIn(items);
  const at = items.indexOf(sign);
  const ends = (item: Item): boolean => ['sign', 'and', 'or', 'nor'].includes(item.is);
  const after = items.slice(at + 1);
  const before = items.slice(0, at).reverse();
  const until = (part: readonly Item[]): readonly Item[] => {
    const end = part.findIndex(ends);
    return end < 0 ? part : part.slice(0, end);
  };
  // A place between two signs, as in "scar cheek naevus", can be of either.
  const next = after.find(ends);
  const last = before.find(ends);
  return [
    ...(next?.is === 'sign' ? [] : codesIn(until(after))),
    ...(last?.is === 'sign' ? [] : codesIn(until(before))),
  ];
}

/** The one place of the sign that lies in a region, or the region itself where it lies in such a place. */
function narrowed(
  places: readonly Code[],
  codes: readonly Code[],
  catalogue: Catalogue,
): Code | undefined {
  const found = new Set<Code>();
  for (const code of codes) {
    for (const place of places) {
      if (isWithin(code, place, catalogue)) found.add(code);
      else if (isWithin(place, code, catalogue)) found.add(place);
    }
  }
  const [only, other] = found;
  return only !== undefined && other === undefined && isSingle(only, catalogue) ? only : undefined;
}

/** A group of regions is no place for a sign. */
function isSingle(code: Code | undefined, catalogue: Catalogue): code is Code {
  const row = code === undefined ? undefined : catalogue.regions.get(code);
  return row !== undefined && row.group !== true;
}
