import type { Path } from '../../issues/path.ts';
import type { Random } from '../random.ts';
import type { Json, JsonObject, Plant } from './fault.ts';

/** An object in a bundle, and where it stands. */
export interface Place {
  readonly object: JsonObject;
  readonly path: Path;
}

export function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The entries of a bundle. */
export function entries(bundle: JsonObject): Place[] {
  return items(bundle['entry'], ['entry']);
}

/** The resources in the entries of a bundle, of these types where any are named. */
export function resources(bundle: JsonObject, ...types: readonly string[]): Place[] {
  return entries(bundle).flatMap(({ object: { resource }, path }) => {
    const type = isObject(resource) ? resource['resourceType'] : undefined;
    if (!isObject(resource) || typeof type !== 'string') return [];
    if (types.length > 0 && !types.includes(type)) return [];
    return [{ object: resource, path: [...path, 'resource'] }];
  });
}

/** Objects anywhere in the resources of a bundle that stand under one of these properties. */
export function elements(bundle: JsonObject, ...names: readonly string[]): Place[] {
  return resources(bundle).flatMap((place) => [...below(place)].filter(isNamed));

  function isNamed({ path }: Place): boolean {
    const own = path.filter((step) => typeof step === 'string').at(-1);
    return names.some((name) => name === own);
  }
}

function* below({ object, path }: Place): Generator<Place> {
  for (const [property, value] of Object.entries(object)) {
    for (const place of items(value, [...path, property])) {
      yield place;
      yield* below(place);
    }
  }
}

/** The objects of a list, or the one object. */
export function items(value: Json | undefined, path: Path): Place[] {
  if (isObject(value)) return [{ object: value, path }];
  if (!Array.isArray(value)) return [];
  return value.flatMap((item, at) =>
    isObject(item) ? [{ object: item, path: [...path, at] }] : [],
  );
}

/** Makes a change in one of the places; `change` says where below it the fault lies. */
export function inOne(
  places: readonly Place[],
  random: Random,
  change: (object: JsonObject, place: Place) => Path | undefined,
): Path | undefined {
  if (places.length === 0) return undefined;
  const place = random.pick(places);
  const where = change(place.object, place);
  return where === undefined ? undefined : [...place.path, ...where];
}

/** Sets a property in one of the places that `find` gives. */
export function setting(
  find: (bundle: JsonObject) => readonly Place[],
  property: string,
  value: Json | ((before: Json | undefined, object: JsonObject, random: Random) => Json),
): Plant {
  return (bundle, random) =>
    inOne(find(bundle), random, (object) => {
      object[property] =
        typeof value === 'function'
          ? value(object[property], object, random)
          : structuredClone(value);
      return [property];
    });
}

/** Takes a property away in one of the places that have it. */
export function without(find: (bundle: JsonObject) => readonly Place[], property: string): Plant {
  return (bundle, random) =>
    inOne(having(find(bundle), property), random, (object) => {
      delete object[property];
      return [property];
    });
}

/** The places that have a property. */
export function having(places: readonly Place[], property: string): Place[] {
  return places.filter(({ object }) => object[property] !== undefined);
}

/** The places that have none of these properties. */
export function lacking(places: readonly Place[], ...properties: readonly string[]): Place[] {
  return places.filter(({ object }) => properties.every((name) => object[name] === undefined));
}

/** All resources of one type, as the first argument of {@link setting} and {@link without}. */
export function all(...types: readonly string[]): (bundle: JsonObject) => Place[] {
  return (bundle) => resources(bundle, ...types);
}

/** Resources of a type that have a property. */
export function typeHaving(type: string, property: string): (bundle: JsonObject) => Place[] {
  return (bundle) => having(resources(bundle, type), property);
}

/** All objects that stand under one of these properties. */
export function every(...names: readonly string[]): (bundle: JsonObject) => Place[] {
  return (bundle) => elements(bundle, ...names);
}

/** Adds an item to a list property of one of the places; `below` says where in it the fault lies. */
export function adding(
  find: (bundle: JsonObject) => readonly Place[],
  property: string,
  item: JsonObject,
  ...below: readonly (string | number)[]
): Plant {
  return (bundle, random) =>
    inOne(find(bundle), random, (object) => {
      const before = object[property];
      const list = Array.isArray(before) ? before : [];
      object[property] = [...list, structuredClone(item)];
      return [property, list.length, ...below];
    });
}

/** Adds a component with this answer to one observation. */
export function answering(answer: JsonObject): Plant {
  const component = { code: { text: 'further answer' }, ...answer };
  return adding(all('Observation'), 'component', component, ...Object.keys(answer));
}

/** Adds a note to one observation. */
export function noting(note: JsonObject): Plant {
  return adding(all('Observation'), 'note', note, ...Object.keys(note));
}

/** Attachments of Media and DocumentReference. */
export function attachments(bundle: JsonObject): Place[] {
  return resources(bundle, 'Media', 'DocumentReference').flatMap(({ object, path }) =>
    items(object['content'], [...path, 'content']).flatMap((content) =>
      content.object['attachment'] === undefined
        ? [content]
        : items(content.object['attachment'], [...content.path, 'attachment']),
    ),
  );
}

/** The requests in the entries of a transaction. */
export function requests(bundle: JsonObject): Place[] {
  return entries(bundle).flatMap(({ object, path }) =>
    items(object['request'], [...path, 'request']),
  );
}
