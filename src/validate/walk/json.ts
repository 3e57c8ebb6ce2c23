/** Reading of JSON whose shape is not sure: a value of another kind counts as absent. */

export type JsonObject = Readonly<Record<string, unknown>>;

export function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

export function textOf(value: unknown): string | undefined {
  return typeof value === 'string' ? value : undefined;
}

const none: readonly never[] = [];

export function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : none;
}

/** Unlike `every` it does not pass over holes, which a list that was not read from a text can have. */
function holdsOnlyObjects(list: readonly unknown[]): list is readonly JsonObject[] {
  for (let at = 0; at < list.length; at++) if (!isObject(list[at])) return false;
  return true;
}

/** The objects of a list; of a single object, that one. */
export function objectsOf(value: unknown): readonly JsonObject[] {
  // Nearly always all are objects, and the list can stay as it is.
  if (!Array.isArray(value)) return isObject(value) ? [value] : none;
  const list: readonly unknown[] = value;
  return holdsOnlyObjects(list) ? list : list.filter(isObject);
}

/**
 * Whether an element is there, as `exists()` of FHIRPath: as a value, or as an extension in its place.
 */
export function has(object: JsonObject, name: string): boolean {
  return isThere(object[name]) || isThere(object[`_${name}`]);
}

/** The same of an element that is not a primitive, and so never stands under a name with `_`. */
export function hasPart(object: JsonObject, name: string): boolean {
  return isThere(object[name]);
}

export function isThere(value: unknown): boolean {
  return Array.isArray(value) ? value.length > 0 : value !== undefined && value !== null;
}

/** Whether a choice such as `value[x]` is there with any of its types. */
export function hasChoice(object: JsonObject, name: string): boolean {
  return choiceName(object, name) !== undefined;
}

/** Name of the property that stands for a choice: `valueQuantity` for `value`. */
export function choiceName(object: JsonObject, name: string): string | undefined {
  for (const key in object) {
    const start = key.startsWith('_') ? 1 : 0;
    const after = key.charCodeAt(start + name.length);
    if (key.startsWith(name, start) && after >= 0x41 && after <= 0x5a && isThere(object[key])) {
      return key.slice(start);
    }
  }
  return undefined;
}
