import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Definitions, Property, TypeInfo } from '../../src/validate/elements/definitions.ts';
import { isObject } from '../../src/validate/walk/json.ts';
import { allDefinitions, resourceTypes } from '../validate/all-types.ts';
import type { FhirRelease } from './corpus.ts';
import { publishedExamples } from './definitions.ts';

/** A published example of any type, or one with a single fault; the same on every machine. */
export interface AnyResource {
  /** File name, with the fault after it where there is one. */
  readonly id: string;
  readonly version: FhirRelease;
  readonly text: string;
  /** The first eight digits of the SHA-256 of the text. */
  readonly digest: string;
}

const EXAMPLES_OF_A_TYPE = 3;
const FAULTS_OF_AN_EXAMPLE = 3;
const LONGEST = 60_000;

type Json = Record<string, unknown>;

/** Some examples of every resource type of a version, each also with one fault of each of some kinds. */
export async function anyResources(version: FhirRelease): Promise<AnyResource[]> {
  const folder = await publishedExamples(version);
  const definitions = allDefinitions(version);
  const types = new Set(resourceTypes(version));
  const found: AnyResource[] = [];
  const counts = new Map<string, number>();
  let turn = 0;
  for (const file of readdirSync(folder).sort()) {
    const type = file.split('-')[0] ?? '';
    const count = counts.get(type) ?? 0;
    if (!types.has(type) || !file.endsWith('.json') || count >= EXAMPLES_OF_A_TYPE) continue;
    const text = readFileSync(join(folder, file), 'utf8').replace(/^\uFEFF/, '');
    if (text.length > LONGEST) continue;
    counts.set(type, count + 1);
    found.push(resource(file, version, text));
    for (let at = 0; at < FAULTS_OF_AN_EXAMPLE; at++) {
      const [name, fault] = faults[turn % faults.length] ?? [];
      turn += 1;
      // A published file is an object in JSON.
      const value = JSON.parse(text) as Json;
      if (name === undefined || fault?.(value, definitions, turn) !== true) continue;
      found.push(resource(`${file} ${name}`, version, JSON.stringify(value)));
    }
  }
  return found;
}

function resource(id: string, version: FhirRelease, text: string): AnyResource {
  const digest = createHash('sha256').update(text).digest('hex').slice(0, 8);
  return { id, version, text, digest };
}

/** Puts a fault into a resource; false where there is no place for it. */
type Fault = (resource: Json, definitions: Definitions, seed: number) => boolean;

const faults: readonly (readonly [name: string, fault: Fault])[] = [
  [
    'required-element-missing',
    atProperty(
      ({ required }) => required,
      (holder, name) => {
        delete holder[name];
      },
    ),
  ],
  [
    'unknown-property',
    (resource) => {
      resource['notInFhir'] = 'x';
      return true;
    },
  ],
  [
    'list-in-place-of-one',
    atProperty(
      ({ list, choice }) => !list && choice === undefined,
      (holder, name) => {
        holder[name] = [holder[name]];
      },
    ),
  ],
  [
    'one-in-place-of-a-list',
    atProperty(
      ({ list }) => list,
      (holder, name) => {
        const value = holder[name];
        holder[name] = Array.isArray(value) ? value[0] : value;
      },
    ),
  ],
  [
    'empty-list',
    atProperty(
      ({ list }) => list,
      (holder, name) => {
        holder[name] = [];
      },
    ),
  ],
  [
    'text-in-place-of-an-object',
    atProperty(
      ({ primitive, type }) => !primitive && type !== 'Resource',
      (holder, name) => {
        holder[name] = 'x';
      },
    ),
  ],
  [
    'code-outside-required-list',
    atProperty(
      ({ listed, list }) => listed !== undefined && !list,
      (holder, name) => {
        holder[name] = 'not-a-code-of-the-list';
      },
    ),
  ],
  [
    'number-in-place-of-text',
    atProperty(
      ({ type, list }) => type === 'string' && !list,
      (holder, name) => {
        holder[name] = 12;
      },
    ),
  ],
  [
    'impossible-date',
    atProperty(
      ({ type, list }) => (type === 'date' || type === 'dateTime') && !list,
      (holder, name) => {
        holder[name] = '2021-02-30';
      },
    ),
  ],
  [
    'empty-text',
    atProperty(
      ({ type, list }) => type === 'string' && !list,
      (holder, name) => {
        holder[name] = '';
      },
    ),
  ],
  [
    'text-in-place-of-true',
    atProperty(
      ({ type }) => type === 'boolean',
      (holder, name) => {
        holder[name] = 'true';
      },
    ),
  ],
  [
    'reference-to-a-wrong-type',
    atProperty(
      ({ type, list, to }) =>
        type === 'Reference' && !list && to !== undefined && !to.includes('Linkage'),
      (holder, name) => {
        holder[name] = { reference: 'Linkage/x' };
      },
    ),
  ],
  [
    'extension-without-url',
    (resource) => {
      if (
        resource['resourceType'] === 'Bundle' ||
        resource['resourceType'] === 'Binary' ||
        resource['resourceType'] === 'Parameters'
      )
        return false;
      resource['extension'] = [{ valueString: 'x' }];
      return true;
    },
  ],
  [
    'unknown-modifier-extension',
    (resource) => {
      if (
        resource['resourceType'] === 'Bundle' ||
        resource['resourceType'] === 'Binary' ||
        resource['resourceType'] === 'Parameters'
      )
        return false;
      resource['modifierExtension'] = [
        { url: 'https://vineyard.example/negated', valueBoolean: true },
      ];
      return true;
    },
  ],
  [
    'script-in-the-narrative',
    (resource) => {
      if (!isObject(resource['text'])) return false;
      resource['text'] = {
        ...resource['text'],
        div: '<div xmlns="http://www.w3.org/1999/xhtml"><script>x</script></div>',
      };
      return true;
    },
  ],
  [
    'id-of-other-characters',
    (resource) => {
      resource['id'] = 'not_an_id';
      return true;
    },
  ],
  [
    'null',
    atProperty(
      ({ list, choice }) => !list && choice === undefined,
      (holder, name) => {
        holder[name] = null;
      },
    ),
  ],
  [
    'choice-with-two-types',
    atProperty(
      ({ choice, type }) =>
        choice?.properties.some((each) => /(String|Boolean)$/.test(each)) === true &&
        type !== 'string' &&
        type !== 'boolean',
      (holder, name, property) => {
        const other =
          property.choice?.properties.find((each) => /(String|Boolean)$/.test(each)) ?? '';
        if (holder[name] !== undefined) holder[other] = other.endsWith('String') ? 'x' : true;
      },
    ),
  ],
  [
    'coding-of-a-relative-system',
    atProperty(
      ({ type, list }) => type === 'CodeableConcept' && !list,
      (holder, name) => {
        holder[name] = { coding: [{ system: 'sometable', code: 'x' }] };
      },
    ),
  ],
  [
    'unit-that-ucum-lacks',
    atProperty(
      ({ type, list }) => (type === 'Quantity' || type === 'SimpleQuantity') && !list,
      (holder, name) => {
        holder[name] = { value: 1, system: 'http://unitsofmeasure.org', code: 'miligram' };
      },
    ),
  ],
  [
    'local-reference-to-nothing',
    atProperty(
      ({ type, list }) => type === 'Reference' && !list,
      (holder, name) => {
        holder[name] = { reference: '#nothing' };
      },
    ),
  ],
  [
    'empty-object',
    atProperty(
      ({ primitive, list, type }) => !primitive && !list && type !== 'Resource',
      (holder, name) => {
        holder[name] = {};
      },
    ),
  ],
  [
    'integer-with-a-fraction',
    atProperty(
      ({ type, list }) => /^(positiveInt|unsignedInt|integer)$/.test(type) && !list,
      (holder, name) => {
        holder[name] = 1.5;
      },
    ),
  ],
  [
    'uri-with-a-space',
    atProperty(
      ({ type, list }) => (type === 'uri' || type === 'url' || type === 'canonical') && !list,
      (holder, name) => {
        holder[name] = 'https://vineyard.example/a b';
      },
    ),
  ],
];

/** Changes one of the properties that stand in the resource and fit, by the seed. */
function atProperty(
  fits: (property: Property) => boolean,
  change: (holder: Json, name: string, property: Property) => void,
): Fault {
  return (resource, definitions, seed) => {
    const places = placesIn(resource, definitions).filter(({ property }) => fits(property));
    const place = places[seed % Math.max(places.length, 1)];
    if (place === undefined) return false;
    change(place.holder, place.name, place.property);
    return true;
  };
}

interface Place {
  readonly holder: Json;
  readonly name: string;
  readonly property: Property;
}

function placesIn(resource: Json, definitions: Definitions): Place[] {
  const places: Place[] = [];
  const visit = (value: unknown, type: TypeInfo | undefined): void => {
    if (!isObject(value)) return;
    for (const [name, property] of type?.properties ?? []) {
      const inner = value[name];
      if (inner === undefined || name.startsWith('_')) continue;
      // The objects are those that were parsed, and ours to change.
      places.push({ holder: value as Json, name, property });
      if (!property.primitive && property.type !== 'Resource') each(inner, property.type);
    }
  };
  const each = (inner: unknown, type: string): void => {
    for (const one of Array.isArray(inner) ? inner : [inner]) {
      visit(one, definitions.types.get(type));
    }
  };
  visit(resource, definitions.types.get(String(resource['resourceType'])));
  return places;
}
