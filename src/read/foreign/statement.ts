import { interpretation, presenceInterpretation } from '../../fhir/observation-codes.ts';
import { LATERALITY_EXTENSION, SNOMED } from '../../fhir/systems.ts';
import { standingOf } from '../../kinds/meanings.ts';
import type { Key, Side } from '../../model/primitive.ts';
import type { Finding, Measurement, Note, Presence, Statement } from '../../model/statement.ts';
import { lateralitySides, sideSnomed } from '../../terminology/sides.ts';
import { claimEqual, type Element, flagOf, innerOf, innersOf, lookAt, peek } from '../element.ts';
import type { Entry } from '../entries.ts';
import { baseOf, claimCommon, type Observed, observe } from '../observation.ts';
import { type Place, placeOf } from '../place.ts';
import { type ExamReading, partNameOf } from '../reading.ts';
import { codingsOf, filled, quantityOf } from '../values.ts';
import type { Meanings } from './mapped.ts';
import { conceptWords, valueWords } from './words.ts';

/** States in which an observation says nothing that may be kept as said. */
const unsaid: ReadonlySet<unknown> = new Set([
  'entered-in-error',
  'cancelled',
  'registered',
  'unknown',
]);

/**
 * An observation without our codes: a sign or measurement where its codes mean one of ours and
 * nothing else, or else a note with its words. Undefined where it says nothing.
 */
export function readForeign(
  reading: ExamReading,
  meanings: Meanings,
  entry: Entry,
  key: Key,
): Statement | undefined {
  if (unsaid.has(peek(entry.resource, 'status'))) {
    reading.reasons.set(entry.resource.json, 'its status says that it was withdrawn or not made');
    return undefined;
  }
  const { claims } = entry.resource;
  return (
    claims.attempt(() => findingOf(reading, meanings, entry, key)) ??
    claims.attempt(() => measurementOf(reading, meanings, entry, key)) ??
    claims.attempt(() => noteOf(reading, meanings, entry, key))
  );
}

function findingOf(
  reading: ExamReading,
  meanings: Meanings,
  entry: Entry,
  key: Key,
): Finding | undefined {
  const { resource } = entry;
  const code = lookAt(resource, 'code');
  const finding = code && meanings.rowOf('findings', code);
  if (code === undefined || finding === undefined) return undefined;
  const presence = presenceOf(meanings, resource);
  const row = reading.catalogue.findings.get(finding);
  const place = foreignPlace(reading, meanings, resource) ?? onlyPlace(row?.regions);
  if (presence === undefined || place === undefined) return undefined;
  const statement: Finding = {
    ...shared(reading, entry, key),
    kind: 'finding',
    finding,
    presence,
    ...place,
  };
  return isSided(statement, reading) ? statement : undefined;
}

function presenceOf(meanings: Meanings, resource: Element): Presence | undefined {
  const answer = lookAt(resource, 'valueCodeableConcept');
  const row = answer && meanings.rowOf('values', answer);
  const value = row?.replace(/^presence\./, '');
  if (value === 'present' || value === 'absent' || value === 'indeterminate') {
    const concept = innerOf(resource, 'valueCodeableConcept');
    if (concept && row !== undefined) meanings.claimFor('values', concept, row);
    claimEqual(resource, 'interpretation', [interpretation(presenceInterpretation[value])]);
    return value;
  }
  const flag = flagOf(resource, 'valueBoolean');
  return flag === undefined ? undefined : flag ? 'present' : 'absent';
}

function measurementOf(
  reading: ExamReading,
  meanings: Meanings,
  entry: Entry,
  key: Key,
): Measurement | undefined {
  const { resource } = entry;
  const code = lookAt(resource, 'code');
  const measure = code && meanings.rowOf('measures', code);
  const row = measure === undefined ? undefined : reading.catalogue.measures.get(measure);
  const quantity = quantityOf(innerOf(resource, 'valueQuantity'));
  if (code === undefined || row === undefined || quantity === undefined) return undefined;
  if (quantity.unit !== row.unit && row.units?.includes(quantity.unit) !== true) return undefined;
  const place = foreignPlace(reading, meanings, resource) ?? { region: row.region };
  const statement: Measurement = {
    ...shared(reading, entry, key),
    kind: 'measurement',
    measure: row.code,
    ...place,
    ...quantity,
  };
  return isSided(statement, reading) ? statement : undefined;
}

/** A side that the place can have, and one wherever it must have one. */
function isSided(statement: Finding | Measurement, reading: ExamReading): boolean {
  const { laterality } = standingOf(statement, reading.catalogue);
  if (laterality === undefined) return false;
  const { sides, required } = lateralitySides[laterality];
  return statement.side === undefined ? !required : sides.includes(statement.side);
}

function onlyPlace(regions: readonly string[] | undefined): Place | undefined {
  const [region] = regions ?? [];
  return region === undefined || regions?.length !== 1 ? undefined : { region };
}

/** Region and side of a body site, by our codes or by equivalent ones and the standard extension. */
function foreignPlace(
  reading: ExamReading,
  meanings: Meanings,
  resource: Element,
): Place | undefined {
  const site = lookAt(resource, 'bodySite');
  if (site === undefined) return undefined;
  const own = placeOf(reading, site);
  const region = own === undefined ? meanings.rowOf('regions', site) : undefined;
  if (own !== undefined) innerOf(resource, 'bodySite');
  if (region === undefined) return own;
  const side = lateralityAt(site);
  innerOf(resource, 'bodySite');
  meanings.claimFor('regions', site, region);
  return { region, ...(side !== undefined && { side }) };
}

const sides = Object.entries(sideSnomed) as [Side, string][]; // pairs of a literal

function lateralityAt(site: Element): Side | undefined {
  for (const extension of innersOf(site, 'extension')) {
    const concept = lookAt(extension, 'valueCodeableConcept');
    if (peek(extension, 'url') !== LATERALITY_EXTENSION || concept === undefined) continue;
    const codes = innersOf(concept, 'coding')
      .filter((coding) => peek(coding, 'system') === SNOMED)
      .map((coding) => peek(coding, 'code'));
    const known = sides.find(([, code]) => codes.includes(code));
    if (known === undefined) continue;
    claimEqual(site, 'extension', [extension.json]);
    return known[0];
  }
  return undefined;
}

/** Code, value and place of an observation in its own words. */
function noteOf(
  reading: ExamReading,
  meanings: Meanings,
  entry: Entry,
  key: Key,
): Note | undefined {
  const { resource } = entry;
  const base = shared(reading, entry, key);
  const place = resource.claims.attempt(() => sidedPlace(reading, meanings, resource));
  // A panel has no value of its own: its members say everything.
  if (base.note === undefined && isPanel(resource)) return undefined;
  const text = wordsOf(resource, place === undefined);
  return text === '' ? undefined : { ...base, kind: 'note', text, ...place };
}

function isPanel(resource: Element): boolean {
  const valued = Object.keys(resource.json).some((name) => /^(value|dataAbsentReason)/.test(name));
  return !valued && Array.isArray(peek(resource, 'hasMember'));
}

/** The words of an observation and nothing else, for one whose details the rules refuse. */
export function readWords(reading: ExamReading, entry: Entry, key: Key): Note | undefined {
  const { resource } = entry;
  return resource.claims.attempt(() => {
    const name = partNameOf(reading, resource);
    claimCommon(observe(reading, entry), name, { category: 'exam' });
    const text = wordsOf(resource, true);
    return text === '' ? undefined : { key, kind: 'note', text };
  });
}

function wordsOf(resource: Element, withSite: boolean): string {
  const code = conceptWords(resource, 'code');
  const value = valueWords(resource) ?? conceptWords(resource, 'dataAbsentReason');
  const site = withSite ? conceptWords(resource, 'bodySite') : undefined;
  const head = [code, site === undefined ? undefined : `(${site})`].filter(Boolean).join(' ');
  return [head, value].filter((part) => part !== undefined && part !== '').join(': ');
}

function sidedPlace(
  reading: ExamReading,
  meanings: Meanings,
  resource: Element,
): Place | undefined {
  const place = foreignPlace(reading, meanings, resource);
  const laterality = place && reading.catalogue.regions.get(place.region)?.laterality;
  if (laterality === undefined || place?.side === undefined) return place;
  return lateralitySides[laterality].sides.includes(place.side) ? place : undefined;
}

/** What a statement has whatever its kind, with the codes of the observation as codings. */
function shared(
  reading: ExamReading,
  entry: Entry,
  key: Key,
): Omit<Note, 'kind' | 'text' | 'region' | 'side'> {
  const observed: Observed = observe(reading, entry);
  claimCommon(observed, partNameOf(reading, entry.resource), { category: 'exam' });
  claimEqual(entry.resource, 'id', key.slice(entry.type.length + 1));
  const code = innerOf(entry.resource, 'code');
  const codings = filled(codingsOf(code === undefined ? [] : innersOf(code, 'coding')));
  return { key, ...baseOf(observed), ...(codings && { codings }) };
}
