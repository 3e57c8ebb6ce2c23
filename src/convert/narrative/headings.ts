import { folded } from '../../find/fold.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import { regionWords } from '../../terminology/tables/lexicon.ts';
import type { HeadingPlace } from '../mapping/mapping.ts';
import { emptyEndings, type HeadingMeaning, knownHeadings } from './known-headings.ts';
import { sideOfWord } from './side-words.ts';
import { tokensIn } from './tokens.ts';

/** What a known heading means. */
export interface Heading extends HeadingMeaning {
  readonly side?: 'right' | 'left' | 'both';
}

/** Looks headings up: those of the mapping, those that are known, and the names of regions. */
export type HeadingLookUp = (label: string) => Heading | undefined;

/** The look-up for a catalogue, with the headings that a mapping states. */
export function headingLookUp(
  catalogue: Catalogue,
  stated: { readonly [heading: string]: HeadingPlace } = {},
): HeadingLookUp {
  const own = new Map(Object.entries(stated).map(([label, place]) => [folded(label), place]));
  const names = regionNames(catalogue);
  const named = (words: readonly string[]): Heading | undefined => {
    const label = words.join(' ');
    return knownHeadings.get(label) ?? names.get(label);
  };
  return (label) => {
    const place = own.get(folded(label));
    if (place !== undefined) return place;
    const tokens = tokensIn(label);
    const sides = tokens.flatMap((token) => sideOfWord(token.text, token.point) ?? []);
    const words = tokens
      .filter((token) => sideOfWord(token.text, token.point) === undefined)
      .map(({ low }) => low)
      .filter((low) => low !== 'the' && low !== '');
    const [one, ...more] = sides;
    if (words.length === 0) {
      return one?.of === undefined || more.length > 0
        ? undefined
        : sided({ region: one.of }, one.side, catalogue);
    }
    const found = named(words) ?? named(withoutEnding(words));
    return found === undefined || one === undefined
      ? found
      : sided(found, more.length === 0 ? one.side : undefined, catalogue);
  };
}

function withoutEnding(words: readonly string[]): readonly string[] {
  const last = words.at(-1);
  return last !== undefined && words.length > 1 && emptyEndings.has(last)
    ? words.slice(0, -1)
    : words;
}

function sided(
  heading: HeadingMeaning,
  side: 'right' | 'left' | 'both' | undefined,
  catalogue: Catalogue,
): Heading {
  const row = heading.region === undefined ? undefined : catalogue.regions.get(heading.region);
  if (row === undefined || side === undefined) return heading;
  return lateralitySides[row.laterality].sides.includes(side) ? { ...heading, side } : heading;
}

const made = new WeakMap<Catalogue, ReadonlyMap<string, HeadingMeaning>>();

/** Names of regions by their folded words; a name of several regions is none. */
function regionNames(catalogue: Catalogue): ReadonlyMap<string, HeadingMeaning> {
  const known = made.get(catalogue);
  if (known !== undefined) return known;
  const names = new Map<string, HeadingMeaning>();
  const several = new Set<string>();
  for (const { code, display } of catalogue.regions.values()) {
    const words = Object.hasOwn(regionWords, code) ? regionWords[code] : undefined;
    const all = [display, words?.name ?? '', ...(words?.en ?? []), ...(words?.de ?? [])];
    for (const name of new Set([...all, ...(words?.short ?? [])].map(folded))) {
      if (name === '') continue;
      if (names.has(name)) several.add(name);
      names.set(name, { region: code });
    }
  }
  for (const name of several) names.delete(name);
  made.set(catalogue, names);
  return names;
}
