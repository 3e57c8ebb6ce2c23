import { carriedText } from './decimal.ts';

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
  return write(resource, options?.pretty ? '\n' : '');
}

/** Deeper than any reader of this library goes, and far from the end of the stack. */
const mostLevels = 1000;

/** `newline` is empty for compact text, else a line break with the indent of the current level. */
function write(value: unknown, newline: string, level = 0): string {
  if (level > mostLevels) {
    throw new TypeError(`cannot write a resource as JSON: nested deeper than ${mostLevels} levels`);
  }
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
      return Array.isArray(value)
        ? writeArray(value, newline, level + 1)
        : writeObject(value, newline, level + 1);
  }
  throw new TypeError(`cannot write a resource as JSON: expected plain data, got ${typeof value}`);
}

function writeArray(items: readonly unknown[], newline: string, level: number): string {
  const inner = newline && `${newline}  `;
  let text = '';
  // By index and not by forEach, which would close the gap of an entry that is not there.
  for (let at = 0; at < items.length; at++) {
    const item = items[at];
    const stated = typeof item === 'number' ? carriedText(items, String(at), item) : undefined;
    text += (text && ',') + inner + (stated ?? write(item, inner, level));
  }
  return text === '' ? '[]' : `[${text}${newline}]`;
}

function writeObject(object: object, newline: string, level: number): string {
  const inner = newline && `${newline}  `;
  const colon = newline ? ': ' : ':';
  let text = '';
  // Read by name, since Object.entries would make an array for each property.
  const properties = object as Readonly<Record<string, unknown>>;
  for (const property of Object.keys(object)) {
    const value = properties[property];
    if (value === undefined) continue;
    const stated = typeof value === 'number' ? carriedText(object, property, value) : undefined;
    text += `${text && ','}${inner}${JSON.stringify(property)}${colon}${stated ?? write(value, inner, level)}`;
  }
  return text === '' ? '{}' : `{${text}${newline}}`;
}
