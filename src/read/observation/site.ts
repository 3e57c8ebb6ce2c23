import { partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { BODY_SITE_EXTENSION } from '../../fhir/names/systems.ts';
import type { Side } from '../../model/primitive.ts';
import { claimEqual, type Element, innerOf, innersOf, lookAt, peek } from '../bundle/element.ts';
import { claimFrame, type Entry } from '../bundle/entries.ts';
import { claimReference, targetOf } from '../bundle/reference.ts';
import { otherIdentifiers, partNameOf } from '../reading.ts';
import type { Components } from './components.ts';
import { ownValue } from './concept.ts';
import type { Observed } from './observation.ts';
import { type Place, placeOf, sides } from './place.ts';

/** Region and side of an observation: in its body site, or in the BodyStructure that it names. */
export function siteOf(observed: Observed, except: readonly Place[] = []): Place | undefined {
  const { reading, entry, element } = observed;
  const site = innerOf(element, 'bodySite');
  const place = placeOf(reading, site, except);
  for (const extension of site === undefined ? [] : innersOf(site, 'extension')) {
    if (peek(extension, 'url') !== BODY_SITE_EXTENSION) continue;
    const structure = structureAt(observed, extension, 'valueReference');
    if (structure === undefined) continue;
    claimEqual(extension, 'url', BODY_SITE_EXTENSION);
    claimReference(reading, extension, 'valueReference');
    readStructure(observed, structure);
  }
  if (place !== undefined) return place;
  // R5 has an element of its own, which stands in place of the body site.
  const structure = structureAt(observed, element, 'bodyStructure');
  if (structure === undefined || entry === structure) return undefined;
  claimReference(reading, element, 'bodyStructure');
  return readStructure(observed, structure);
}

function structureAt(
  { reading, entry }: Observed,
  holder: Element,
  name: string,
): Entry | undefined {
  const reference = lookAt(holder, name);
  const target = reference && targetOf(reading, reference, entry);
  return typeof target === 'object' && target.type === 'BodyStructure' ? target : undefined;
}

/** Region and side, or the side alone in a component, since there is no body site to say it. */
export function placeOrSide(observed: Observed): Place | { readonly side?: Side } {
  return siteOf(observed) ?? sideOf(observed.components);
}

/** Places that the statement does not speak of; undefined where one of them cannot be read. */
export function exceptionsOf({ reading, components }: Observed): readonly Place[] | undefined {
  const places = components
    .all('except')
    .map((element) => placeOf(reading, innerOf(element, 'valueCodeableConcept')));
  const read = places.filter((place) => place !== undefined);
  return read.length === places.length ? read : undefined;
}

/** The side that stands in a component. */
export function sideOf(components: Components): { readonly side?: Side } {
  const stated = components.value('side');
  const side = sides.find((known) => known === stated);
  return side === undefined ? {} : { side };
}

/** R4 has one location with qualifiers, R5 a list of included structures. */
function readStructure({ reading }: Observed, entry: Entry): Place | undefined {
  const { resource } = entry;
  const name = partNameOf(reading, resource);
  const prefix = partName.bodyStructure('');
  if (name?.startsWith(prefix) !== true) return undefined;
  claimFrame(reading, entry, resourceName.bodyStructure(name.slice(prefix.length)));
  otherIdentifiers(reading, resource, name);
  const [included] = innersOf(resource, 'includedStructure');
  const location = included ? innerOf(included, 'structure') : innerOf(resource, 'location');
  const place = placeOf(reading, location);
  const qualifier = included
    ? innerOf(included, 'laterality')
    : innersOf(resource, 'locationQualifier')[0];
  ownValue(reading, qualifier, 'side');
  claimEqual(resource, 'description', location && peek(location, 'text'));
  const patient = lookAt(resource, 'patient');
  if (patient && reading.people.isSubject(patient, entry)) {
    claimReference(reading, resource, 'patient');
  }
  return place;
}
