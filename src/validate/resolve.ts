import type { BundleIndex, Entry } from './bundle-index.ts';
import { type JsonObject, objectsOf } from './json.ts';
import type { Scope } from './scope.ts';

/** What a reference leads to; an entry where it leads to one of the bundle. */
export interface Resolved {
  readonly resource: JsonObject;
  readonly entry?: Entry;
  /** By type and id alone, since the entry that refers has no fullUrl that the reference is relative to. */
  readonly loose?: true;
}

/**
 * The resource that a literal reference means, as far as it is at hand: contained, or an entry of the
 * nearest bundle, in constant time.
 * @see https://hl7.org/fhir/R4/bundle.html#references
 */
export function resolve(reference: string, scope: Scope): Resolved | undefined {
  if (reference.startsWith('#')) {
    if (reference === '#') return { resource: scope.root };
    const inside = containedById(scope).get(reference.slice(1));
    return inside && { resource: inside };
  }
  if (scope.index === undefined) return undefined;
  const bare = withoutHistory(reference);
  const exact = exactEntry(bare, scope.index, scope.entry);
  if (exact?.resource !== undefined) return { resource: exact.resource, entry: exact };
  if (isAbsolute(bare) || scope.index.entries[scope.entry]?.base !== undefined) return undefined;
  const alike = scope.index.byTypeAndId.get(bare);
  return alike?.resource && { resource: alike.resource, entry: alike, loose: true };
}

function exactEntry(reference: string, index: BundleIndex, from: number): Entry | undefined {
  const base = isAbsolute(reference) ? '' : index.entries[from]?.base;
  return base === undefined ? undefined : index.byFullUrl.get(base + reference);
}

/** The contained resources of the outer resource, by id; the first of each. */
export function containedById(scope: Scope): ReadonlyMap<string, JsonObject> {
  scope.contained ??= new Map(
    objectsOf(scope.root['contained'])
      .flatMap((each): [string, JsonObject][] =>
        typeof each['id'] === 'string' ? [[each['id'], each]] : [],
      )
      .reverse(),
  );
  return scope.contained;
}

export function withoutHistory(reference: string): string {
  const at = reference.indexOf('/_history/');
  return at === -1 ? reference : reference.slice(0, at);
}

export function isAbsolute(reference: string): boolean {
  return /^[A-Za-z][A-Za-z0-9+.-]*:/.test(reference);
}
