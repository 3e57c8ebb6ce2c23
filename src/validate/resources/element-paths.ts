import type { Property } from '../elements/definitions.ts';
import type { Scope } from '../walk/scope.ts';

/** Types that definitions name and no resource has an element of. */
const abstractTypes: ReadonlySet<string> = new Set([
  ...['Base', 'Element', 'BackboneElement', 'DataType', 'BackboneType', 'PrimitiveType'],
  ...['Resource', 'DomainResource', 'CanonicalResource', 'MetadataResource', 'xhtml'],
]);

/** Types that an element may have; `open` where a path leads beyond what is known. */
export type Reach = readonly string[] | 'open';

/** Types that stand for those below them, whose elements are not known here. */
export function isAbstract(name: string): boolean {
  return abstractTypes.has(name);
}

/** Whether a version has a type of this name; of logical models and FHIRPath nothing is known. */
export function isType(name: string, { definitions, resourceTypes }: Scope): boolean {
  return (
    name.includes(':') ||
    abstractTypes.has(name) ||
    resourceTypes.has(name) ||
    definitions.types.get(name) !== undefined ||
    Object.hasOwn(definitions.primitives, name)
  );
}

/**
 * The types that an element may have, by its path as definitions write it; `open` where the path leads
 * beyond what is known, such as into any resource.
 */
export function typesAt(path: string, scope: Scope): readonly string[] | 'open' | 'unknown' {
  const [first = '', ...steps] = path.split('.');
  let types: readonly string[] = [first];
  for (const step of steps) {
    const [type = ''] = types;
    if (types.length !== 1 || type === 'Resource') return 'open';
    const info = scope.definitions.types.get(type);
    if (info === undefined) return 'open';
    if (step === 'id') return 'open';
    types = typesOf(step, info.properties);
    if (types.length === 0) return 'unknown';
  }
  return types;
}

/** The types of what stands under a name in any of some types. */
export function typesUnder(from: readonly string[], name: string, scope: Scope): Reach | 'unknown' {
  if (name === 'id') return 'open';
  const found = new Set<string>();
  for (const type of from) {
    const info = isAbstract(type) ? undefined : scope.definitions.types.get(type);
    if (info === undefined) return 'open';
    for (const each of typesOf(name, info.properties)) found.add(each);
  }
  if (found.size === 0) return 'unknown';
  // Any resource at all.
  return found.has('Resource') ? 'open' : [...found];
}

/** The type of an element, or those of a choice, which is named with `[x]`, without, or as in JSON. */
function typesOf(name: string, properties: ReadonlyMap<string, Property>): readonly string[] {
  const plain = properties.get(name);
  if (plain !== undefined) return [plain.type];
  const choice = name.replace(/\[x\]$/, '');
  const found: string[] = [];
  for (const [key, property] of properties) {
    if (key.startsWith('_') || property.choice?.name !== choice) continue;
    found.push(property.type);
  }
  return found;
}
