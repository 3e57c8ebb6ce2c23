import { createHash } from 'node:crypto';
import {
  isObject,
  type JsonObject,
  listOf,
  objectsOf,
  textOf,
} from '../../../src/validate/walk/json.ts';
import { claimsOf, type Example, type GuideFiles } from './guides.ts';

/** An example of a guide with one change, made where an element of a profile constrains it. */
export interface Mutant {
  /** What was changed: `min`, `max`, `pattern` and so on. */
  readonly kind: string;
  /** Profile and element that the change was made for. */
  readonly rule: string;
  readonly file: string;
  readonly resource: JsonObject;
  /** The first ten digits of the SHA-256 of its text. */
  readonly digest: string;
}

/** Most mutants of one kind for one element of a profile, over all examples of it. */
const FOR_EACH_ELEMENT = 2;
/** And of elements that are taken out of an example whatever the profile says of them. */
const REMOVED_FROM_EACH = 6;

/** The mutants of a guide, the same on every machine. */
export function mutantsOf({ definitions, examples }: GuideFiles): Mutant[] {
  const byUrl = new Map(definitions.map((each) => [textOf(each['url']) ?? '', each]));
  const counts = new Map<string, number>();
  const seen = new Set<string>();
  const found: Mutant[] = [];
  const add = (kind: string, rule: string, file: string, resource: JsonObject, most: number) => {
    const key = `${kind} ${rule}`;
    const count = counts.get(key) ?? 0;
    if (count >= most) return;
    const digest = digestOf(resource);
    if (seen.has(digest)) return;
    seen.add(digest);
    counts.set(key, count + 1);
    found.push({ kind, rule, file, resource, digest });
  };
  for (const example of examples) {
    seen.add(digestOf(example.resource));
    for (const url of claimsOf(example.resource)) {
      const profile = byUrl.get(url);
      if (profile === undefined) continue;
      for (const { kind, element, resource } of byElement(example, profile)) {
        const rule = `${url.slice(url.lastIndexOf('/') + 1)}#${element}`;
        add(kind, rule, example.file, resource, FOR_EACH_ELEMENT);
      }
    }
    for (const resource of withoutOne(example.resource)) {
      add('remove', example.file, example.file, resource, REMOVED_FROM_EACH);
    }
  }
  return found;
}

export function digestOf(resource: JsonObject): string {
  return createHash('sha256').update(JSON.stringify(resource)).digest('hex').slice(0, 10);
}

type Steps = readonly (string | number)[];

interface Change {
  readonly kind: string;
  readonly element: string;
  readonly resource: JsonObject;
}

function* byElement({ resource }: Example, profile: JsonObject): Generator<Change> {
  const snapshot = isObject(profile['snapshot']) ? objectsOf(profile['snapshot']['element']) : [];
  for (const element of snapshot.slice(1)) {
    const id = textOf(element['id']) ?? '';
    const path = textOf(element['path']) ?? '';
    if (/\.(?:id|meta|text|contained|implicitRules|language)(?:\.|$)/.test(path)) continue;
    const places = placesOf(resource, path.split('.').slice(1));
    for (const [kind, mutant] of changesOf(resource, element, places)) {
      yield { kind, element: id, resource: mutant };
    }
  }
}

/** Where the values of an element stand in a resource, whatever slice they are of. */
function placesOf(resource: JsonObject, path: readonly string[]): Steps[] {
  let places: Steps[] = [[]];
  for (const name of path) {
    places = places.flatMap((place) => {
      const holder = valueAt(resource, place);
      if (!isObject(holder)) return [];
      const key = name.endsWith('[x]') ? choiceIn(holder, name.slice(0, -3)) : name;
      if (key === undefined || !Object.hasOwn(holder, key)) return [];
      const value = holder[key];
      return Array.isArray(value) ? value.map((_, at) => [...place, key, at]) : [[...place, key]];
    });
  }
  return places;
}

function choiceIn(holder: JsonObject, name: string): string | undefined {
  return Object.keys(holder).find(
    (key) => key.startsWith(name) && /^[A-Z]/.test(key.slice(name.length)),
  );
}

function valueAt(resource: unknown, steps: Steps): unknown {
  let value = resource;
  for (const step of steps) {
    value = isObject(value) || Array.isArray(value) ? Reflect.get(value, step) : undefined;
  }
  return value;
}

function* changesOf(
  resource: JsonObject,
  element: JsonObject,
  places: readonly Steps[],
): Generator<readonly [kind: string, resource: JsonObject]> {
  const sliced = typeof element['sliceName'] === 'string' ? 'slice-' : '';
  const max = textOf(element['max']);
  const isExtension = /[eE]xtension$/.test(textOf(element['path']) ?? '');
  for (const place of places.slice(0, 8)) {
    const value = valueAt(resource, place);
    if (Number(element['min']) > 0) yield [`${sliced}min`, removed(resource, place)];
    if (max !== '*' && typeof place.at(-1) === 'number') {
      yield [`${sliced}max`, repeated(resource, place, Number(max))];
    }
    for (const [kind, changed] of otherValues(element, value)) {
      yield [kind, withValue(resource, place, changed)];
    }
    if (textOf(element['path'])?.endsWith('[x]')) yield* otherTypes(resource, place);
    if (isExtension && isObject(value)) {
      yield ['extension-value', withValue(resource, place, otherValue(value))];
      const url = `${textOf(value['url'])}-other`;
      yield ['extension-url', withValue(resource, place, { ...value, url })];
    }
  }
  if (places.length === 0 && max === '0') yield* forbidden(resource, element);
}

/** Values that an element does not take, by what it fixes, binds or refers to. */
function* otherValues(
  element: JsonObject,
  value: unknown,
): Generator<readonly [kind: string, value: unknown]> {
  const fixed = valueUnder(element, 'fixed');
  if ((fixed ?? valueUnder(element, 'pattern')) !== undefined) {
    const kind = fixed === undefined ? 'pattern' : 'fixed';
    for (const changed of otherThan(value)) yield [kind, changed];
  }
  const { binding } = element;
  if (isObject(binding) && binding['strength'] !== 'example') {
    for (const changed of uncoded(value)) yield [`binding-${textOf(binding['strength'])}`, changed];
  }
  if (isObject(value) && typeof value['reference'] === 'string') {
    const reference = `Basic/${value['reference'].replace(/^.*[/#:]/, '')}`;
    yield ['target', { ...value, reference }];
  }
}

/** What a profile forbids is put in, where a plain value of its type is easily made. */
function* forbidden(
  resource: JsonObject,
  element: JsonObject,
): Generator<readonly [kind: string, resource: JsonObject]> {
  const path = (textOf(element['path']) ?? '').split('.');
  const name = path.at(-1) ?? '';
  const [holder] = placesOf(resource, path.slice(1, -1));
  const type = textOf(objectsOf(element['type'])[0]?.['code']) ?? '';
  const plain: Readonly<Record<string, unknown>> = {
    string: 'x',
    boolean: true,
    CodeableConcept: { text: 'x' },
    Reference: { display: 'x' },
    Quantity: { value: 1 },
  };
  if (holder === undefined || !Object.hasOwn(plain, type) || name.endsWith('Extension')) return;
  const base = isObject(element['base']) ? element['base'] : {};
  const key = name.endsWith('[x]')
    ? name.slice(0, -3) + type.charAt(0).toUpperCase() + type.slice(1)
    : name;
  const value = textOf(base['max']) === '1' ? plain[type] : [plain[type]];
  yield ['max', withValue(resource, [...holder, key], value)];
}

function valueUnder(element: JsonObject, prefix: string): unknown {
  const name = Object.keys(element).find(
    (key) => key.startsWith(prefix) && /^[A-Z]/.test(key.slice(prefix.length)),
  );
  return name === undefined ? undefined : element[name];
}

function* otherThan(value: unknown): Generator<unknown> {
  if (typeof value === 'string') yield `${value}x`;
  else if (typeof value === 'number') yield value + 1;
  else if (typeof value === 'boolean') yield !value;
  else if (isObject(value)) {
    for (const name of Object.keys(value).slice(0, 3)) {
      const inner = value[name];
      const [first, ...others] = Array.isArray(inner) ? inner : [inner];
      for (const changed of otherThan(first)) {
        yield { ...value, [name]: Array.isArray(inner) ? [changed, ...others] : changed };
        break;
      }
    }
  }
}

/** A value with a code that no value set has. */
function* uncoded(value: unknown): Generator<unknown> {
  const system = 'https://vineyard.example/CodeSystem/baskets';
  if (typeof value === 'string') yield 'no-such-code';
  if (!isObject(value)) return;
  if (typeof value['code'] === 'string') {
    yield { ...value, system, code: 'basket', display: 'Basket' };
    yield { ...value, code: 'no-such-code' };
  }
  if (Array.isArray(value['coding'])) {
    yield { ...value, coding: [{ system, code: 'basket', display: 'Basket' }] };
    const [first] = objectsOf(value['coding']);
    if (first !== undefined) yield { ...value, coding: [{ ...first, code: 'no-such-code' }] };
    yield { text: 'Basket' };
  }
}

function* otherTypes(
  resource: JsonObject,
  place: Steps,
): Generator<readonly [kind: string, resource: JsonObject]> {
  const key = String(place.at(-1));
  const stem =
    /^(value|effective|onset|abatement|deceased|medication|occurrence|performed|multipleBirth|collected|timing|answer|product|asNeeded)/.exec(
      key,
    )?.[1];
  if (stem === undefined) return;
  const holder = place.slice(0, -1);
  const { [key]: _, ...others } = valueAt(resource, holder) as JsonObject; // where the value was found
  for (const [type, value] of [
    ['String', 'x'],
    ['CodeableConcept', { text: 'x' }],
    ['DateTime', '2026-01-02'],
    ['Boolean', true],
  ] as const) {
    if (stem + type === key) continue;
    const changed = { ...others, [stem + type]: value };
    yield ['type', holder.length === 0 ? changed : withValue(resource, holder, changed)];
  }
}

function otherValue(extension: JsonObject): JsonObject {
  const { url, extension: parts } = extension;
  if (Array.isArray(parts)) return { url, valueString: 'x' };
  return 'valueString' in extension ? { url, valueBoolean: true } : { url, valueString: 'x' };
}

function withValue(resource: JsonObject, steps: Steps, value: unknown): JsonObject {
  const copy = structuredClone(resource) as Record<string, unknown>;
  const holder = valueAt(copy, steps.slice(0, -1)) as object; // of a place that was found
  Reflect.set(holder, steps.at(-1) ?? '', value);
  return copy;
}

function removed(resource: JsonObject, steps: Steps): JsonObject {
  const copy = structuredClone(resource) as Record<string, unknown>;
  const last = steps.at(-1) ?? '';
  const holder = valueAt(copy, steps.slice(0, -1));
  if (Array.isArray(holder)) {
    if (holder.length === 1) return removed(resource, steps.slice(0, -1));
    holder.splice(Number(last), 1);
  } else {
    Reflect.deleteProperty(holder as object, last);
    Reflect.deleteProperty(holder as object, `_${last}`);
    // An object that lost its only part would break ele-1 and not the profile.
    if (Object.keys(holder as object).length === 0 && steps.length > 1) {
      return removed(resource, steps.slice(0, -1));
    }
  }
  return copy;
}

function repeated(resource: JsonObject, steps: Steps, max: number): JsonObject {
  const copy = structuredClone(resource) as Record<string, unknown>;
  const list = valueAt(copy, steps.slice(0, -1)) as unknown[]; // its last step is a number
  const [item] = [list[Number(steps.at(-1))]];
  for (let at = 0; at < Math.max(1, max); at++) list.push(structuredClone(item));
  return copy;
}

/** The resource without each of its elements in turn, down to those of its elements' elements. */
function* withoutOne(resource: JsonObject): Generator<JsonObject> {
  const places: Steps[] = [];
  const collect = (value: unknown, steps: Steps): void => {
    if (steps.length > 4) return;
    if (Array.isArray(value)) {
      listOf(value).forEach((each, at) => {
        if (at < 3) {
          places.push([...steps, at]);
          collect(each, [...steps, at]);
        }
      });
    } else if (isObject(value)) {
      for (const [name, each] of Object.entries(value)) {
        if (['resourceType', 'id', 'meta', 'text', 'div'].includes(name)) continue;
        if (!Array.isArray(each)) places.push([...steps, name]);
        collect(each, [...steps, name]);
      }
    }
  };
  collect(resource, []);
  // Spread over the resource rather than from its start.
  const step = Math.max(1, Math.floor(places.length / (REMOVED_FROM_EACH + 2)));
  for (let at = 0; at < places.length; at += step) yield removed(resource, places[at] ?? []);
}
