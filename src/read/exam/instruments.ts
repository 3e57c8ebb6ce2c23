import { partIdentifier, partName } from '../../fhir/names/part-names.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import type { Instrument } from '../../model/people.ts';
import type { Key } from '../../model/primitive.ts';
import {
  claimEqual,
  type Element,
  innerOf,
  innersOf,
  lookAt,
  lookAtList,
  textOf,
} from '../bundle/element.ts';
import { claimFrame, type Entry } from '../bundle/entries.ts';
import { claimReference, rememberReference, targetName, targetOf } from '../bundle/reference.ts';
import { ownCode, ownTable } from '../observation/concept.ts';
import { claimCommon, observe, ownTime } from '../observation/observation.ts';
import { quantityOf } from '../observation/values.ts';
import { type ExamReading, otherIdentifiers, partNamedBy, type Reading } from '../reading.ts';

/** Where the instruments of an exam stand, by key. */
export interface InstrumentPlaces {
  readonly places: ReadonlyMap<Key, InstrumentPlace>;
  readonly keyOf: (reference: Element, from: Entry) => Key | undefined;
}

interface InstrumentPlace {
  /** The observation that it was used. */
  readonly used: Entry | undefined;
  /** Its Device, where that is in the bundle. */
  readonly device: Entry | undefined;
}

/** The instruments that observations say were used, and Devices of the exam besides. */
export function findInstruments(
  reading: Reading,
  parts: ReadonlyMap<string, Entry>,
): InstrumentPlaces {
  const places = new Map<Key, InstrumentPlace>();
  const keys = new Map<string, Key>();
  for (const [name, entry] of parts) {
    const found = placeOfPart(reading, name, entry);
    if (found === undefined || places.get(found.key)?.used !== undefined) continue;
    const { key, target, place } = found;
    if (target !== undefined) keys.set(targetName(target), key);
    // Set anew, so that the order is that of the observations where there are any.
    places.delete(key);
    places.set(key, place);
  }
  return {
    places,
    keyOf: (reference, from) => {
      const named = restOf(partNamedBy(reading, reference), partName.instrument(''));
      if (named !== undefined && places.has(named)) return named;
      const target = targetOf(reading, reference, from);
      return target === undefined ? undefined : keys.get(targetName(target));
    },
  };
}

function placeOfPart(
  reading: Reading,
  name: string,
  entry: Entry,
): { key: Key; target: Entry | string | undefined; place: InstrumentPlace } | undefined {
  const used = restOf(name, partName.used(''));
  const key = used ?? restOf(name, partName.instrument(''));
  if (key === undefined || entry.type !== (used === undefined ? 'Device' : 'Observation')) {
    return undefined;
  }
  const target = used === undefined ? entry : deviceOf(reading, entry);
  const device = typeof target === 'object' && target.type === 'Device' ? target : undefined;
  return { key, target, place: { used: used === undefined ? undefined : entry, device } };
}

function restOf(name: string | undefined, prefix: string): string | undefined {
  return name?.startsWith(prefix) ? name.slice(prefix.length) : undefined;
}

function deviceOf(reading: Reading, entry: Entry): Entry | string | undefined {
  const device = lookAt(entry.resource, 'device');
  if (device === undefined) return undefined;
  rememberReference(reading, device);
  return targetOf(reading, device, entry);
}

/** The instruments of an exam, each read whole or not at all. */
export function readInstruments(reading: ExamReading, { places }: InstrumentPlaces): Instrument[] {
  return [...places].flatMap(([key, { used, device }]) => {
    const { claims } = (used ?? device ?? { resource: undefined }).resource ?? {};
    return (
      claims?.attempt(() => {
        const stated = used && readUsed(reading, key, used);
        const described = device && readDevice(reading, key, device);
        const instrument = described ?? stated;
        // Without its Device, only a reference says which instrument it was.
        return described || stated?.reference !== undefined ? instrument : undefined;
      }) ?? []
    );
  });
}

/** `type` and the value of a property are lists in one version and not in the other. */
function readDevice(reading: ExamReading, key: Key, entry: Entry): Instrument | undefined {
  const { resource } = entry;
  claimFrame(reading, entry, resourceName.device(key));
  otherIdentifiers(reading, resource, partName.instrument(key));
  const concept = innerOf(resource, 'type') ?? innersOf(resource, 'type')[0];
  const type = ownCode(reading, concept, 'instruments');
  if (type === undefined) return undefined;
  const serial = textOf(resource, 'serialNumber');
  return {
    key,
    type: type.code,
    ...measured(reading, innersOf(resource, 'property'), 'type'),
    ...detailOf(resource),
    ...(serial !== undefined && { serial }),
  };
}

function readUsed(reading: ExamReading, key: Key, entry: Entry): Instrument | undefined {
  const { resource } = entry;
  const observed = observe(reading, entry);
  const { components } = observed;
  claimCommon(observed, partName.used(key), { category: 'survey' });
  claimFirstPerformer(reading, entry);
  ownTime(observed);
  ownCode(reading, innerOf(resource, 'code'), 'items');
  const type = ownCode(reading, innerOf(resource, 'valueCodeableConcept'), 'instruments');
  const device = lookAt(resource, 'device');
  if (type === undefined || device === undefined) return undefined;
  const target = targetOf(reading, device, entry);
  claimReference(reading, resource, 'device');
  const { systems, id } = reading;
  const identifier = partIdentifier(systems.statement, id, partName.instrument(key));
  claimEqual(device, 'identifier', identifier);
  const serial = components.text('serial');
  return {
    key,
    type: type.code,
    ...(typeof target === 'string' && { reference: target }),
    ...measured(reading, innersOf(resource, 'component'), 'code'),
    ...detailOf(resource),
    ...(serial !== undefined && { serial }),
  };
}

/** Observations about the exam as a whole are in the name of its first examiner. */
export function claimFirstPerformer(reading: ExamReading, entry: Entry): void {
  const [reference] = lookAtList(entry.resource, 'performer');
  const key = reference && reading.people.examinerOf(reference, entry);
  if (key !== undefined && key === reading.people.examiners[0]?.key) {
    claimReference(reading, entry.resource, 'performer', 0);
  }
}

function detailOf(resource: Element): Pick<Instrument, 'detail'> {
  const [note] = innersOf(resource, 'note');
  const detail = note && textOf(note, 'text');
  return detail === undefined ? {} : { detail };
}

function measured(
  reading: ExamReading,
  properties: readonly Element[],
  name: 'type' | 'code',
): Pick<Instrument, 'magnification' | 'resolution'> {
  const found: { magnification?: string; resolution?: Instrument['resolution'] } = {};
  for (const property of properties) {
    const concept = lookAt(property, name);
    const item = concept && ownTable(reading, concept, ['items'])?.code;
    if (item !== 'magnification' && item !== 'resolution') continue;
    if (found[item] !== undefined) continue;
    const quantity = property.claims.attempt(() => {
      const read = quantityOf(
        innerOf(property, 'valueQuantity') ?? innersOf(property, 'valueQuantity')[0],
      );
      const factor = read?.unit === '1' && read.comparator === undefined;
      return item === 'resolution' || factor ? read : undefined;
    });
    if (quantity === undefined) continue;
    ownCode(reading, innerOf(property, name), 'items');
    if (item === 'magnification') found.magnification = quantity.value;
    else found.resolution = quantity;
  }
  return {
    ...(found.magnification !== undefined && { magnification: found.magnification }),
    ...(found.resolution && { resolution: found.resolution }),
  };
}
