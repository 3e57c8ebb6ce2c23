import { append } from '../../data/append.ts';
import { BODY_SITE_EXTENSION, SNOMED } from '../../fhir/names/systems.ts';
import type { Side } from '../../model/primitive.ts';
import {
  claimEqual,
  type Element,
  innerOf,
  innersOf,
  lookAt,
  lookAtList,
  peek,
} from '../bundle/element.ts';
import { claimFrame, type Entry } from '../bundle/entries.ts';
import { claimReference, targetOf } from '../bundle/reference.ts';
import { type Place, placeOf } from '../observation/place.ts';
import type { ExamReading } from '../reading.ts';
import type { Meanings } from './mapped.ts';
import {
  lateralityAttribute,
  meaningIn,
  type SidedSite,
  sideCodes,
  sidedSites,
  sideExtensions,
} from './published-codes.ts';
import { sidesIn } from './wording.ts';

/** Where an observation of others says that it was made. */
export interface ForeignSite {
  readonly place?: Place;
  /** The site is only a part of the region, so that what is absent there is not absent in all of it. */
  readonly narrower?: true;
  /** The side stands in words alone. */
  readonly sideInWords?: true;
  /** Why the site cannot be used although there is one. */
  readonly trouble?: string;
}

interface Source {
  readonly reading: ExamReading;
  readonly meanings: Meanings;
  readonly entry: Entry;
}

const sideOfCode = meaningIn(sideCodes);
const sidedSite = meaningIn(sidedSites);

/** Region and side of a resource, in each of the ways that are published; claims what it uses. */
export function foreignSite(source: Source): ForeignSite {
  const { resource } = source.entry;
  const single = lookAt(resource, 'bodySite');
  const list = single === undefined ? lookAtList(resource, 'bodySite') : [single];
  if (list.length > 1) return { trouble: 'it names several sites' };
  const [site] = list;
  const structure = structureOf(source, site);
  const parts = [
    ...(site === undefined ? [] : [partOf(source, site, [])]),
    ...(structure === undefined ? [] : structureParts(source, structure)),
  ];
  const found = agreed(parts);
  if (found.place === undefined) return found;
  if (single !== undefined) innerOf(resource, 'bodySite');
  else if (site !== undefined) innersOf(resource, 'bodySite');
  return found;
}

/** What one concept says of the place. */
interface Part {
  readonly regions: readonly string[];
  readonly sides: readonly Side[];
  readonly worded: readonly Side[];
  readonly narrower: boolean;
  readonly trouble?: string;
}

function agreed(parts: readonly Part[]): ForeignSite {
  const trouble = parts.find((part) => part.trouble !== undefined)?.trouble;
  if (trouble !== undefined) return { trouble };
  const regions = [...new Set(parts.flatMap((part) => part.regions))];
  const sides = bothOf(new Set(parts.flatMap((part) => part.sides)));
  const worded = bothOf(new Set(parts.flatMap((part) => part.worded)));
  const [region] = regions;
  if (region === undefined) return {};
  if (regions.length > 1) return { trouble: 'its sites are different places' };
  if (sides.length > 1 || worded.length > 1) return { trouble: 'it names different sides' };
  const [coded] = sides;
  const [word] = worded;
  if (coded !== undefined && word !== undefined && coded !== word) {
    return { trouble: 'its words and its codes name different sides' };
  }
  const side = coded ?? word;
  return {
    place: { region, ...(side !== undefined && { side }) },
    ...(parts.some((part) => part.narrower) && { narrower: true }),
    ...(coded === undefined && word !== undefined && { sideInWords: true }),
  };
}

/** Where both are named, right and left beside it say no more. */
function bothOf(sides: ReadonlySet<Side>): readonly Side[] {
  if (!sides.has('both')) return [...sides];
  return ['both', ...[...sides].filter((side) => !['both', 'right', 'left'].includes(side))];
}

function partOf(source: Source, site: Element, qualifiers: readonly Element[]): Part {
  const { reading, meanings } = source;
  const own = placeOf(reading, site);
  if (own !== undefined) {
    const { region, side } = own;
    return { regions: [region], sides: side ? [side] : [], worded: [], narrower: false };
  }
  const codings = innersOf(site, 'coding');
  const sited = codings.flatMap((coding) => sitedBy(coding) ?? []);
  const expressed = codings.flatMap((coding) => expressionOf(meanings, coding) ?? []);
  const mapped = meanings.rowOf('regions', site);
  const sides = [
    ...codings.flatMap((coding) => sideOf(coding) ?? []),
    ...extensionSides(site),
    ...qualifiers.flatMap((qualifier) =>
      innersOf(qualifier, 'coding').flatMap((coding) => sideOf(coding) ?? []),
    ),
  ];
  if (mapped !== undefined) meanings.claimFor('regions', site, mapped);
  return {
    regions: [
      ...sited.map(({ region }) => region),
      ...expressed.map(({ region }) => region),
      ...(mapped === undefined ? [] : [mapped]),
    ],
    sides: [...sited.map(({ side }) => side), ...expressed.map(({ side }) => side), ...sides],
    worded: wordedSides(site, qualifiers),
    narrower: sited.some(({ narrower }) => narrower === true),
  };
}

function sitedBy(coding: Element): SidedSite | undefined {
  const found = sidedSite(peek(coding, 'system'), peek(coding, 'code'));
  if (found !== undefined) claimCoding(coding);
  return found;
}

function sideOf(coding: Element): Side | undefined {
  const found = sideOfCode(peek(coding, 'system'), peek(coding, 'code'));
  if (found !== undefined) claimCoding(coding);
  return found;
}

function claimCoding(coding: Element): void {
  for (const name of ['system', 'version', 'code', 'display', 'userSelected']) {
    coding.claims.claim(coding.json, name);
  }
}

/**
 * A SNOMED CT expression that refines a site by its side, with or without terms.
 * @see https://confluence.ihtsdotools.org/display/DOCSCG
 */
const expression =
  /^\s*(\d+)\s*(?:\|[^|]*\|)?\s*:\s*(\d+)\s*(?:\|[^|]*\|)?\s*=\s*(\d+)\s*(?:\|[^|]*\|)?\s*$/;

function expressionOf(meanings: Meanings, coding: Element): SidedSite | undefined {
  const code = peek(coding, 'code');
  if (peek(coding, 'system') !== SNOMED || typeof code !== 'string' || code.length > 1000) {
    return undefined;
  }
  const [, base = '', attribute, value] = expression.exec(code) ?? [];
  const side = attribute === lateralityAttribute.code ? sideOfCode(SNOMED, value) : undefined;
  const region = meanings.rowOfCode('regions', SNOMED, base);
  if (side === undefined || region === undefined) return undefined;
  claimCoding(coding);
  return { region, side };
}

function extensionSides(site: Element): Side[] {
  const found: Side[] = [];
  for (const extension of innersOf(site, 'extension')) {
    const url = peek(extension, 'url');
    if (typeof url !== 'string' || !sideExtensions.includes(url)) continue;
    const concept = lookAt(extension, 'valueCodeableConcept');
    const sides = concept ? innersOf(concept, 'coding').flatMap((one) => sideOf(one) ?? []) : [];
    if (sides.length > 0) claimEqual(site, 'extension', peek(site, 'extension'));
    append(found, sides);
  }
  return found;
}

/** Sides named by the texts and displays of a site. */
function wordedSides(site: Element, qualifiers: readonly Element[]): Side[] {
  return [site, ...qualifiers].flatMap((concept) => {
    const texts = [
      peek(concept, 'text'),
      ...lookAtList(concept, 'coding').map((one) => peek(one, 'display')),
    ];
    return texts.flatMap((text) => (typeof text === 'string' ? [...sidesIn(text, true)] : []));
  });
}

interface Led {
  readonly holder: Element;
  readonly name: string;
  readonly structure: Entry;
}

/** The BodyStructure of others that a site or, in R5, the resource itself leads to. */
function findStructure({ reading, entry }: Source, site: Element | undefined): Led | undefined {
  const { resource } = entry;
  const extensions = site === undefined ? [] : lookAtList(site, 'extension');
  const holders = [
    ...extensions
      .filter((extension) => peek(extension, 'url') === BODY_SITE_EXTENSION)
      .map((holder) => ({ holder, name: 'valueReference' })),
    { holder: resource, name: 'bodyStructure' },
  ];
  for (const { holder, name } of holders) {
    const reference = lookAt(holder, name);
    const structure = reference && targetOf(reading, reference, entry);
    if (typeof structure !== 'object' || structure.type !== 'BodyStructure') continue;
    return { holder, name, structure };
  }
  return undefined;
}

function structureOf(source: Source, site: Element | undefined): Entry | undefined {
  const led = findStructure(source, site);
  if (led === undefined) return undefined;
  const { holder, name, structure } = led;
  if (name === 'valueReference' && site !== undefined) {
    innersOf(site, 'extension');
    holder.claims.claim(holder.json, 'url');
  }
  claimReference(source.reading, holder, name);
  return structure;
}

/** R4 has one location with qualifiers, R5 a list of included structures and one of excluded ones. */
function structureParts(source: Source, structure: Entry): Part[] {
  const { reading } = source;
  const { resource } = structure;
  const refused = (trouble: string): Part[] => [
    { regions: [], sides: [], worded: [], narrower: false, trouble },
  ];
  if (peek(resource, 'active') === false) return refused('its body structure is not active');
  if (lookAtList(resource, 'excludedStructure').length > 0) {
    return refused('its body structure leaves a part out');
  }
  const patient = lookAt(resource, 'patient');
  if (patient !== undefined && !reading.people.isSubject(patient, structure)) {
    return refused('its body structure is of another patient');
  }
  const included = innersOf(resource, 'includedStructure');
  if (included.length > 1) return refused('its body structure has several parts');
  claimFrame(reading, structure, undefined);
  if (patient !== undefined) claimReference(reading, resource, 'patient');
  const [part] = included;
  const concept = part ? innerOf(part, 'structure') : innerOf(resource, 'location');
  if (concept === undefined) return [];
  const qualifiers = part
    ? [
        ...[innerOf(part, 'laterality')].filter((one) => one !== undefined),
        ...innersOf(part, 'qualifier'),
      ]
    : innersOf(resource, 'locationQualifier');
  return [partOf(source, concept, qualifiers)];
}

/** Properties of a resource in which a side can stand, besides its own words for people. */
const sidedProperty =
  /^(code|bodySite|value|extension|component|method|interpretation|evidence|stage)/;

/** Every side that a resource or a part of it names, by code or word, wherever it stands. */
export function sidesNamed(holder: object, source: Source): ReadonlySet<Side> {
  const { resource } = source.entry;
  const found = new Set<Side>();
  for (const [name, value] of Object.entries(holder)) {
    if (sidedProperty.test(name)) addSides(found, value, name === 'bodySite');
  }
  const site = lookAt(resource, 'bodySite') ?? lookAtList(resource, 'bodySite')[0];
  const structure = findStructure(source, site)?.structure;
  for (const name of ['location', 'locationQualifier', 'includedStructure']) {
    if (structure !== undefined) addSides(found, peek(structure.resource, name), true);
  }
  return found;
}

function addSides(found: Set<Side>, value: unknown, atSite: boolean): void {
  if (typeof value === 'string') for (const side of sidesIn(value, atSite)) found.add(side);
  if (value === null || typeof value !== 'object') return;
  for (const side of codedSides(value)) found.add(side);
  for (const [name, inner] of Object.entries(value)) {
    // Of a coding its display is words; its code is not.
    if (typeof inner === 'object' || !['system', 'url', 'code'].includes(name)) {
      addSides(found, inner, atSite);
    }
  }
}

/** Sides that a coding means, in an expression as well. */
function codedSides(value: object): Side[] {
  const { system, code } = value as Readonly<Record<string, unknown>>; // read as unknown alone
  const ids = system === SNOMED && typeof code === 'string' ? (code.match(/\d+/g) ?? []) : [];
  const all = ids.length > 1 ? ids : [code];
  return all.flatMap((one) => sideOfCode(system, one) ?? sidedSite(system, one)?.side ?? []);
}
