/** A resource as it came from a server: nothing but its type is known. */
export interface JsonResource {
  readonly resourceType: string;
  readonly [property: string]: unknown;
}

export type JsonRecord = Readonly<Record<string, unknown>>;

export function isJson(value: unknown): value is JsonRecord {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

export function resourceOf(value: unknown): JsonResource | undefined {
  if (!isJson(value) || !Object.hasOwn(value, 'resourceType')) return undefined;
  const { resourceType } = value;
  if (typeof resourceType !== 'string' || !/^[A-Z][A-Za-z]{1,60}$/.test(resourceType)) {
    return undefined;
  }
  return { ...value, resourceType };
}

/** The objects of a list; nothing where the property is none. */
export function objectsOf(holder: JsonRecord, property: string): JsonRecord[] {
  const list = Object.hasOwn(holder, property) ? holder[property] : undefined;
  return Array.isArray(list) ? list.filter(isJson) : [];
}

export function objectOf(holder: JsonRecord, property: string): JsonRecord {
  const value = Object.hasOwn(holder, property) ? holder[property] : undefined;
  return isJson(value) ? value : {};
}

export function textOf(holder: JsonRecord, property: string): string | undefined {
  const value = Object.hasOwn(holder, property) ? holder[property] : undefined;
  return typeof value === 'string' ? value : undefined;
}

/** `system|value` of the first identifier; empty where there is none. */
export function identifierOf(resource: JsonResource): string {
  const [first] = objectsOf(resource, 'identifier');
  return first === undefined ? '' : `${textOf(first, 'system')}|${textOf(first, 'value')}`;
}
