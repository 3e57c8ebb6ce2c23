import { carriedText } from './decimal.ts';

/**
 * JSON text of a resource, with each decimal as it was stated (4.0 stays 4.0).
 * Same property order as the object, `undefined` left out, two spaces of indent when `pretty`.
 * Throws TypeError where the value is no plain JSON (bigint, function, number that is not finite).
 */
export function toJson(resource: unknown, options?: { readonly pretty?: boolean }): string {
  return write(resource, options?.pretty ? '\n' : '');
}

/** `newline` is empty for compact text, else a line break with the indent of the current level. */
function write(value: unknown, newline: string): string {
  if (value === null || typeof value === 'boolean') return String(value);
  if (typeof value === 'string') return JSON.stringify(value);
  if (typeof value === 'number' && Number.isFinite(value)) return String(value);
  if (Array.isArray(value)) {
    return writeList('[', ']', newline, (inner) => value.map((item) => write(item, inner)));
  }
  if (typeof value === 'object') {
    return writeList('{', '}', newline, (inner) => writeProperties(value, inner));
  }
  throw new TypeError(`cannot write a resource as JSON: expected plain data, got ${typeof value}`);
}

function writeProperties(object: object, newline: string): string[] {
  const colon = newline === '' ? ':' : ': ';
  const parts: string[] = [];
  for (const [property, value] of Object.entries(object)) {
    if (value === undefined) continue;
    const stated = typeof value === 'number' ? carriedText(object, property, value) : undefined;
    parts.push(JSON.stringify(property) + colon + (stated ?? write(value, newline)));
  }
  return parts;
}

function writeList(
  open: string,
  close: string,
  newline: string,
  items: (inner: string) => string[],
): string {
  const inner = newline === '' ? '' : `${newline}  `;
  const written = items(inner);
  return written.length === 0
    ? open + close
    : open + inner + written.join(`,${inner}`) + newline + close;
}
