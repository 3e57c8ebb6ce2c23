import { lateralityDisplay } from '../../fhir/laterality.ts';
import { LATERALITY_EXTENSION, SNOMED } from '../../fhir/names/systems.ts';
import { placeCode, placeText, placeTextExcept } from '../../fhir/place.ts';
import type { Side } from '../../model/primitive.ts';
import { snomedDisplay } from '../../terminology/published/snomed.ts';
import { sideSnomed, sideText } from '../../terminology/sides.ts';
import {
  claimEqual,
  type Element,
  innerOf,
  innersOf,
  isObject,
  peek,
  textOf,
} from '../bundle/element.ts';
import { type Codes, claimCodings, codingsBeside } from './concept.ts';

export interface Place {
  readonly region: string;
  readonly side?: Side;
}

/** All sides that there are. */
export const sides = Object.keys(sideText) as Side[]; // keys of a literal

/** Region and side of a body site that has our code; claims what follows from them. */
export function placeOf(
  codes: Codes,
  site: Element | undefined,
  except: readonly Place[] = [],
): Place | undefined {
  const place = site && statedPlace(codes, site);
  if (site === undefined || place === undefined) return undefined;
  const { region, side } = place;
  const row = codes.catalogue.regions.get(region);
  const text = placeText(row?.display ?? region, side, codes.language.sides);
  const system = codes.lookup.systemOf('regions', region);
  const sided = placeCode(region, side);
  claimCodings(site, [
    { system, code: sided, display: text },
    // A map can name the place with its side, whose codes then stand before those of the region.
    ...(side === undefined
      ? []
      : codingsBeside(codes, { table: 'regions', code: sided, maps: [] })),
    ...codingsBeside(codes, { table: 'regions', code: region, maps: row?.maps }),
  ]);
  const names = except.map((one) =>
    placeText(
      codes.catalogue.regions.get(one.region)?.display ?? one.region,
      one.side,
      codes.language.sides,
    ),
  );
  claimEqual(site, 'text', placeTextExcept(text, codes.language.texts.except, names));
  if (side !== undefined) claimLaterality(site, side);
  return place;
}

/** Region and side without a claim. A code with a dot can be a region of an adopter, or region and side. */
function statedPlace({ catalogue, lookup }: Codes, site: Element): Place | undefined {
  const list = peek(site, 'coding');
  const coding: unknown = Array.isArray(list) ? list[0] : undefined;
  if (!isObject(coding)) return undefined;
  const { code, system } = coding;
  if (typeof code !== 'string') return undefined;
  const side = sides.find((known) => code.endsWith(`.${known}`));
  const region = side === undefined ? code : code.slice(0, -side.length - 1);
  const known = (name: string): boolean =>
    catalogue.regions.has(name) && lookup.systemOf('regions', name) === system;
  if (side !== undefined && known(region)) return { region, side };
  return known(code) ? { region: code } : undefined;
}

function claimLaterality(site: Element, side: Side): void {
  for (const extension of innersOf(site, 'extension')) {
    const concept = peek(extension, 'valueCodeableConcept');
    if (peek(extension, 'url') !== LATERALITY_EXTENSION || !isObject(concept)) continue;
    const inner = innerOf(extension, 'valueCodeableConcept');
    const [coding] = inner === undefined ? [] : innersOf(inner, 'coding');
    if (coding === undefined || peek(coding, 'code') !== sideSnomed[side]) continue;
    claimEqual(extension, 'url', LATERALITY_EXTENSION);
    claimEqual(coding, 'system', SNOMED);
    claimEqual(coding, 'code', sideSnomed[side]);
    const { display } = lateralityDisplay(snomedDisplay(sideSnomed[side] ?? ''));
    claimEqual(coding, 'display', display);
    textOf(coding, 'version');
  }
}
