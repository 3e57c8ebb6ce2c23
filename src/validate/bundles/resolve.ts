import { type JsonObject, objectsOf } from '../walk/json.ts';
import type { Scope } from '../walk/scope.ts';
import { type BundleIndex, type Entry, versionOf } from './bundle-index.ts';

/** What a reference leads to; an entry where it leads to one of the bundle. */
export interface Resolved {
  readonly resource: JsonObject;
  readonly entry?: Entry;
  /** By type and id alone, since the entry that refers has no fullUrl that the reference is relative to. */
  readonly loose?: true;
}

/**
 * The resource that a literal reference means, as far as it is at hand whole: contained, or an entry
 * of the nearest bundle, in constant time.
 * @see https://hl7.org/fhir/R4/bundle.html#references
 */
export function resolve(reference: string, scope: Scope): Resolved | undefined {
  const found = named(reference, scope);
  const onlyIds = scope.index?.onlyIds;
  if (onlyIds === undefined || found?.entry === undefined) return found;
  if (found.entry.number === scope.entry) return found;
  onlyIds.missed = true;
  return undefined;
}

/** The same where its type and id are enough: of a bundle that is looked at entry by entry no more is held. */
export function named(reference: string, scope: Scope): Resolved | undefined {
  if (reference.startsWith('#')) {
    if (reference === '#') return { resource: scope.root };
    const inside = containedById(scope).get(reference.slice(1));
    return inside && { resource: inside };
  }
  return scope.index === undefined ? undefined : entryOf(reference, scope.index, scope.entry);
}

/** The entry that a reference in another entry means, with the version that it names. */
export function entryOf(
  reference: string,
  index: BundleIndex,
  from: number,
): (Resolved & { readonly entry: Entry }) | undefined {
  const { bare, version } = versioned(reference);
  const base = isAbsolute(bare) ? '' : index.entries[from]?.base;
  const exact = base === undefined ? undefined : index.byFullUrl.get(base + bare);
  if (exact?.resource !== undefined) return inVersion(exact, base + bare, version, index);
  if (base !== undefined) return undefined;
  const alike = index.byTypeAndId.get(bare);
  const found = alike && inVersion(alike, bare, version, index);
  return found && { ...found, loose: true };
}

/**
 * A resource that does not tell its version may be any; of those that do, the one that is named.
 * @see https://hl7.org/fhir/R4/bundle.html#references
 */
function inVersion(
  first: Entry,
  name: string,
  version: string | undefined,
  { byVersion }: BundleIndex,
): (Resolved & { readonly entry: Entry }) | undefined {
  const named = version === undefined ? first : byVersion.get(`${name} ${version}`);
  const entry = named ?? (versionOf(first.resource) === undefined ? first : undefined);
  return entry?.resource && { resource: entry.resource, entry };
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
  return versioned(reference).bare;
}

function versioned(reference: string): { readonly bare: string; readonly version?: string } {
  const at = reference.indexOf('/_history/');
  if (at === -1) return { bare: reference };
  return { bare: reference.slice(0, at), version: reference.slice(at + '/_history/'.length) };
}

export function isAbsolute(reference: string): boolean {
  return /^[A-Za-z][A-Za-z0-9+.-]*:/.test(reference);
}
