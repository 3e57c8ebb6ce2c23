import type {
  Definitions,
  Property,
  TypeInfo,
} from '../../../src/validate/elements/definitions.ts';
import { isObject } from '../../../src/validate/walk/json.ts';

export type Json = Record<string, unknown>;

/** Puts a fault into a resource; false where there is no place for it. */
export type Fault = (resource: Json, definitions: Definitions, seed: number) => boolean;

/** A fault by the name that ends the name of its cases. */
export type NamedFault = readonly [name: string, fault: Fault];

/** Changes one of the properties that stand in the resource and fit, by the seed. */
export function atProperty(
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
