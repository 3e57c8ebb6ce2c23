import { instrumentIdentity } from '../../fhir/names/identity.ts';
import { partIdentifier, partName } from '../../fhir/names/part-names.ts';
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
import { claimShared } from '../people/shared.ts';
import { type ExamReading, partNamedBy, type Reading } from '../reading.ts';

/** Where the instruments of an exam stand, by key. */
export interface InstrumentPlaces {
  /** The observation that each was used. */
  readonly places: ReadonlyMap<Key, Entry>;
  readonly keyOf: (reference: Element, from: Entry) => Key | undefined;
}

/** The instruments that observations say were used. */
export function findInstruments(
  reading: Reading,
  parts: ReadonlyMap<string, Entry>,
): InstrumentPlaces {
  const places = new Map<Key, Entry>();
  const keys = new Map<string, Key>();
  for (const [name, entry] of parts) {
    const key = restOf(name, partName.used(''));
    if (key === undefined || entry.type !== 'Observation' || places.has(key)) continue;
    places.set(key, entry);
    const device = lookAt(entry.resource, 'device');
    if (device === undefined) continue;
    rememberReference(reading, device);
    const target = targetOf(reading, device, entry);
    if (target !== undefined) keys.set(targetName(target), key);
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

function restOf(name: string | undefined, prefix: string): string | undefined {
  return name?.startsWith(prefix) ? name.slice(prefix.length) : undefined;
}

/** The instruments of an exam, each read whole or not at all. */
export function readInstruments(reading: ExamReading, { places }: InstrumentPlaces): Instrument[] {
  return [...places].flatMap(
    ([key, entry]) =>
      entry.resource.claims.attempt(() => readInstrument(reading, key, entry)) ?? [],
  );
}

function readInstrument(reading: ExamReading, key: Key, entry: Entry): Instrument | undefined {
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
  const instrument = {
    key,
    type: type.code,
    ...(typeof target === 'string' && { reference: target }),
    ...measured(reading, resource),
    ...detailOf(resource),
    ...(serial !== undefined && { serial }),
  };
  if (typeof target === 'object' && target.type === 'Device')
    claimDevice(reading, target, instrument);
  return instrument;
}

/** Claims what a Device repeats of the instrument; its type is a list in R5. */
function claimDevice(reading: ExamReading, entry: Entry, instrument: Instrument): void {
  const { resource } = entry;
  claimFrame(reading, entry, undefined);
  const concept = lookAt(resource, 'type') ?? lookAtList(resource, 'type')[0];
  if (concept && ownTable(reading, concept, ['instruments'])?.code === instrument.type) {
    ownCode(reading, innerOf(resource, 'type') ?? innersOf(resource, 'type')[0], 'instruments');
  }
  claimEqual(resource, 'serialNumber', instrument.serial);
  claimShared(entry, 'Device', instrumentIdentity(instrument, reading.systems.exam));
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
  observation: Element,
): Pick<Instrument, 'magnification' | 'resolution'> {
  const found: { magnification?: string; resolution?: Instrument['resolution'] } = {};
  for (const component of innersOf(observation, 'component')) {
    const concept = lookAt(component, 'code');
    const item = concept && ownTable(reading, concept, ['items'])?.code;
    if (item !== 'magnification' && item !== 'resolution') continue;
    if (found[item] !== undefined) continue;
    const quantity = component.claims.attempt(() => {
      const read = quantityOf(innerOf(component, 'valueQuantity'));
      const factor = read?.unit === '1' && read.comparator === undefined;
      return item === 'resolution' || factor ? read : undefined;
    });
    if (quantity === undefined) continue;
    ownCode(reading, innerOf(component, 'code'), 'items');
    if (item === 'magnification') found.magnification = quantity.value;
    else found.resolution = quantity;
  }
  return {
    ...(found.magnification !== undefined && { magnification: found.magnification }),
    ...(found.resolution && { resolution: found.resolution }),
  };
}
