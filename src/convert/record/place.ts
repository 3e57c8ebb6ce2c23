import { targetConversion } from '../../kinds/registries/conversions.ts';
import type { Code, Side } from '../../model/primitive.ts';
import { isWithin } from '../../model/rules/places.ts';
import type { Problem } from '../build/built.ts';
import type { SideWithin } from '../mapping/mapping.ts';
import type { Plan } from '../mapping/plan.ts';
import type { Target } from '../mapping/target.ts';

/** Fields of one record that say more about its value. Blank fields are left out. */
export interface Roles {
  /** Words of all side fields: what is said holds on each of these sides. */
  readonly sides?: readonly string[];
  readonly region?: string;
  readonly methods?: readonly string[];
  readonly conditions?: readonly string[];
  readonly modality?: string;
  readonly unit?: string;
  readonly at?: string;
  /** Name of the thing among several of its kind. */
  readonly group?: string;
}

export interface Place {
  readonly region?: Code;
  readonly side?: Side;
  readonly methods?: readonly [Code, ...Code[]];
  readonly conditions?: readonly [Code, ...Code[]];
  readonly modality?: Code;
}

/**
 * Region, side, method and modality of a value, a place for each side that it is said of, or the first
 * thing about them that does not fit.
 */
export function placesOf(
  target: Target,
  roles: Roles,
  plan: Plan,
): readonly [Place, ...Place[]] | Problem {
  const [word, ...others] = roles.sides ?? [];
  const first = placeOf(target, roles, word, plan);
  if (isProblem(first)) return first;
  const places: [Place, ...Place[]] = [first];
  for (const other of others) {
    const place = placeOf(target, roles, other, plan);
    if (isProblem(place)) return place;
    if (places.some(({ side }) => side === place.side)) continue;
    places.push(place);
  }
  if (places.length < 2 || places.every(({ side }) => side === 'left' || side === 'right')) {
    return places;
  }
  return {
    problem: 'side-conflict',
    facts: { reason: 'several-sides' },
  };
}

function placeOf(
  target: Target,
  roles: Roles,
  sideWord: string | undefined,
  plan: Plan,
): Place | Problem {
  const region = lookUp(roles.region, plan.regions, 'regions');
  if (isProblem(region)) return region;
  const methods = lookUpAll(roles.methods, plan.methods, 'methods');
  if (isProblem(methods)) return methods;
  const conditions = lookUpAll(roles.conditions, plan.measureConditions, 'measureConditions');
  if (isProblem(conditions)) return conditions;
  const modality = lookUp(roles.modality, plan.modalities, 'modalities');
  if (isProblem(modality)) return modality;
  const ownRegion = 'region' in target ? target.region : undefined;
  if (region !== undefined && ownRegion !== undefined && region !== ownRegion) {
    return {
      problem: 'conflicting-fields',
      facts: { reason: 'region' },
    };
  }
  const place = region ?? ownRegion ?? targetConversion(target).home?.(target, plan.catalogue);
  const side = sideOf(target, sideWord, place, plan);
  if (isProblem(side)) return side;
  const [first, ...more] = methods ?? ('methods' in target ? target.methods : undefined) ?? [];
  return {
    ...(region !== undefined && { region }),
    ...(side !== undefined && { side }),
    ...(first !== undefined && { methods: [first, ...more] }),
    ...(conditions !== undefined && { conditions }),
    ...(modality !== undefined && { modality }),
  };
}

export function isProblem(found: unknown): found is Problem {
  return typeof found === 'object' && found !== null && 'problem' in found;
}

/** Codes of all words, each once; nothing where there is no word. */
function lookUpAll(
  words: readonly string[] | undefined,
  table: { get: (text: string) => Code | undefined },
  name: string,
): readonly [Code, ...Code[]] | Problem | undefined {
  const codes = new Set<Code>();
  for (const word of words ?? []) {
    const code = lookUp(word, table, name);
    if (isProblem(code)) return code;
    if (code !== undefined) codes.add(code);
  }
  const [first, ...more] = codes;
  return first === undefined ? undefined : [first, ...more];
}

function lookUp(
  word: string | undefined,
  table: { get: (text: string) => Code | undefined },
  name: string,
): Code | Problem | undefined {
  if (word === undefined) return undefined;
  return (
    table.get(word) ?? {
      problem: 'unknown-word',
      facts: { reason: 'role', property: name },
    }
  );
}

function sideOf(
  target: Target,
  word: string | undefined,
  region: Code | undefined,
  plan: Plan,
): Side | Problem | undefined {
  const own = 'side' in target ? target.side : undefined;
  if (word === undefined) return own;
  const meaning = plan.sides.get(word);
  if (meaning === undefined) {
    return {
      problem: 'unknown-side',
      facts: { reason: 'word' },
    };
  }
  if (typeof meaning === 'object' && !belongs(meaning, region, plan)) {
    return {
      problem: 'side-conflict',
      facts: { reason: 'within', code: meaning.within },
    };
  }
  const side = typeof meaning === 'object' ? meaning.side : meaning;
  if (own !== undefined && own !== side) {
    return {
      problem: 'side-conflict',
      facts: { reason: 'item' },
    };
  }
  return side;
}

function belongs({ within }: SideWithin, region: Code | undefined, plan: Plan): boolean {
  if (region === undefined) return false;
  const { regions } = plan.catalogue;
  return regions.get(region)?.section === within || isWithin(region, within, plan.catalogue);
}
