import { carriedText, DECIMAL_TEXT } from './decimal.ts';

/**
 * Writes plain data as JSON, with each decimal as it was stated: 4.0 stays 4.0. Properties keep
 * their order, and `undefined` is left out.
 *
 * @param resource A resource, a bundle or any other plain data.
 * @param options `pretty`: indent by two spaces. Default false: one line.
 * @returns The text.
 * @throws {TypeError} Where the data holds what JSON cannot: a bigint, a function, a number that is
 *   not finite; and where it is nested deeper than a thousand levels.
 * @example
 * const pretty = toJson(bundle, { pretty: true });
 */
export function toJson(resource: unknown, options?: { readonly pretty?: boolean }): string {
  const newline = options?.pretty ? '\n' : '';
  const ours = new Set<object>();
  return needsOurs(resource, 0, ours) ? write(resource, newline, ours) : written(resource, newline);
}

/** Deeper than any reader of this library goes, and far from the end of the stack. */
const mostLevels = 1000;

/**
 * Whether JSON.stringify, which is several times as fast, would write a value otherwise: it loses the
 * texts of decimals, and writes null for what JSON cannot hold. `ours` takes all objects of that kind.
 */
function needsOurs(value: unknown, level: number, ours: Set<object>): boolean {
  if (level > mostLevels) {
    throw new TypeError(`cannot write a resource as JSON: nested deeper than ${mostLevels} levels`);
  }
  switch (typeof value) {
    case 'string':
    case 'boolean':
      return false;
    case 'number':
      return !Number.isFinite(value);
    case 'object':
      break;
    default:
      return true;
  }
  if (value === null) return false;
  let found: boolean;
  if (Array.isArray(value)) {
    found = DECIMAL_TEXT in value;
    // By index, so that a gap counts as well.
    for (let at = 0; at < value.length; at++) {
      if (needsOurs(value[at], level + 1, ours)) found = true;
    }
  } else {
    found = !isPlain(value);
    // By name and not by a list of entries, which would be made for each object.
    const properties = value as Readonly<Record<string, unknown>>;
    for (const name in properties) {
      const member = properties[name];
      if (member !== undefined && needsOurs(member, level + 1, ours)) found = true;
    }
  }
  if (found) ours.add(value);
  return found;
}

/** Without texts of decimals, and of no class: JSON.stringify asks a date or a boxed value for another. */
function isPlain(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return (prototype === Object.prototype || prototype === null) && !(DECIMAL_TEXT in value);
}

/** As JSON.stringify writes it; `newline` as of {@link write}. */
function written(value: unknown, newline: string): string {
  if (newline === '') return JSON.stringify(value);
  // Line breaks within texts are escaped: those that stand here are of the layout.
  return JSON.stringify(value, null, 2).replaceAll('\n', newline);
}

/** `newline` is empty for compact text, else a line break with the indent of the current level. */
function write(value: unknown, newline: string, ours: ReadonlySet<object>): string {
  switch (typeof value) {
    case 'string':
      return JSON.stringify(value);
    case 'boolean':
      return String(value);
    case 'number':
      if (Number.isFinite(value)) return String(value);
      break;
    case 'object':
      if (value === null) return 'null';
      if (!ours.has(value)) return written(value, newline);
      return Array.isArray(value)
        ? writeArray(value, newline, ours)
        : writeObject(value, newline, ours);
  }
  throw new TypeError(`cannot write a resource as JSON: expected plain data, got ${typeof value}`);
}

function writeArray(items: readonly unknown[], newline: string, ours: ReadonlySet<object>): string {
  const inner = newline && `${newline}  `;
  let text = '';
  // By index and not by forEach, which would close the gap of an entry that is not there.
  for (let at = 0; at < items.length; at++) {
    const item = items[at];
    const stated = typeof item === 'number' ? carriedText(items, String(at), item) : undefined;
    text += (text && ',') + inner + (stated ?? write(item, inner, ours));
  }
  return text === '' ? '[]' : `[${text}${newline}]`;
}

function writeObject(object: object, newline: string, ours: ReadonlySet<object>): string {
  const inner = newline && `${newline}  `;
  const colon = newline ? ': ' : ':';
  let text = '';
  // Read by name, since Object.entries would make an array for each property.
  const properties = object as Readonly<Record<string, unknown>>;
  for (const property of Object.keys(object)) {
    const value = properties[property];
    if (value === undefined) continue;
    const stated = typeof value === 'number' ? carriedText(object, property, value) : undefined;
    text += `${text && ','}${inner}${JSON.stringify(property)}${colon}${stated ?? write(value, inner, ours)}`;
  }
  return text === '' ? '{}' : `{${text}${newline}}`;
}
