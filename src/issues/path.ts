/** Where something stands in a structure: property names and array indexes from the root. */
export type Path = readonly (string | number)[];

/**
 * Writes a path as text in the manner of FHIRPath: `entry[3].resource.status`.
 *
 * @param path Property names and places in lists, from the outside in.
 * @returns The text; empty for the root.
 * @example
 * pathText(['entry', 3, 'resource', 'status']); // entry[3].resource.status
 */
export function pathText(path: Path): string {
  let text = '';
  for (const step of path) {
    if (typeof step === 'number') text += `[${step}]`;
    else text += text === '' || step.startsWith('[') ? step : `.${step}`;
  }
  return text;
}

/**
 * Writes a path as a JSON Pointer: `/entry/3/resource/status`.
 *
 * @param path Property names and places in lists, from the outside in.
 * @returns The pointer; empty for the root.
 * @example
 * pathPointer(['entry', 3, 'resource', 'status']); // /entry/3/resource/status
 * @see https://www.rfc-editor.org/rfc/rfc6901 section 3 for the escapes
 */
export function pathPointer(path: Path): string {
  return path.map((step) => `/${String(step).replace(/~/g, '~0').replace(/\//g, '~1')}`).join('');
}

/** Inverse of {@link pathPointer}; digits-only steps become array indexes. */
export function pathFromPointer(pointer: string): Path {
  if (pointer === '') return [];
  return pointer
    .slice(1)
    .split('/')
    .map((step) => step.replace(/~1/g, '/').replace(/~0/g, '~'))
    .map((step) => (/^(0|[1-9]\d*)$/.test(step) ? Number(step) : step));
}
