import type { Side } from '../model/primitive.ts';
import type { Page } from './page.ts';
import type { ToldPlace } from './teller.ts';

/** Sides in the order in which they are told; places without a side come first. */
const sideOrder: readonly (Side | undefined)[] = [
  undefined,
  'both',
  'right',
  'left',
  'midline',
  'right-of-midline',
  'left-of-midline',
];

/**
 * Many places behind what is said of all of them. The side stands before the places it holds for, so
 * that none can be read with the side of another: `: Node level IA – right and left: Temple; Eyebrow`.
 */
export function placesText(places: readonly ToldPlace[], page: Page): string {
  const { teller } = page;
  const [only, ...more] = merged(places);
  if (only !== undefined && more.length === 0) return `: ${teller.placeOf(only)}`;
  const bySide = new Map<Side | undefined, ToldPlace[]>();
  for (const place of merged(places)) {
    const there = bySide.get(place.side) ?? [];
    bySide.set(place.side, there);
    there.push(place);
  }
  const groups = sideOrder.flatMap((side) => {
    const group = bySide.get(side);
    if (group === undefined) return [];
    const names = namesOf(group, page).join('; ');
    return [side === undefined ? `: ${names}` : ` – ${teller.side(side)}: ${names}`];
  });
  return groups.join('');
}

/** Right and left of one region are both sides of it. */
function merged(places: readonly ToldPlace[]): readonly ToldPlace[] {
  const sides = new Map<string, Set<Side | undefined>>();
  const bare = (place: ToldPlace): boolean => (place.except ?? []).length === 0;
  for (const place of places.filter(bare)) {
    const there = sides.get(place.region) ?? new Set();
    sides.set(place.region, there);
    for (const side of place.side === 'both' ? (['right', 'left'] as const) : [place.side]) {
      there.add(side);
    }
  }
  const together = [...sides].flatMap(([region, there]): ToldPlace[] => {
    const both = there.has('right') && there.has('left');
    const rest = [...there].filter((side) => !both || (side !== 'right' && side !== 'left'));
    return [
      ...(both ? [{ region, side: 'both' as const }] : []),
      ...rest.map((side) => ({ region, side })),
    ];
  });
  return [...together, ...places.filter((place) => !bare(place))];
}

function isLevel({ region, except = [] }: ToldPlace, { labels }: Page): boolean {
  return except.length === 0 && Object.hasOwn(labels.shortPlaces, region);
}

/** Names of places of one side; three levels or more that follow one another are told as a run. */
function namesOf(places: readonly ToldPlace[], page: Page): readonly string[] {
  const { levels, shortPlaces } = page.labels;
  const order = Object.keys(shortPlaces);
  const there = new Set(places.filter((place) => isLevel(place, page)).map(({ region }) => region));
  const names: string[] = [];
  for (let first = 0; first < order.length; first++) {
    if (!there.has(order[first] ?? '')) continue;
    let last = first;
    while (there.has(order[last + 1] ?? '')) last++;
    const run = order.slice(first, last + 1).map((region) => shortPlaces[region] ?? region);
    if (run.length > 2) names.push(`${levels.several} ${run[0]} ${levels.to} ${run.at(-1)}`);
    else for (const level of run) names.push(`${levels.one} ${level}`);
    first = last;
  }
  const others = places.filter((place) => !isLevel(place, page));
  return [...names, ...others.map(({ region, except }) => page.teller.placeOf({ region, except }))];
}
