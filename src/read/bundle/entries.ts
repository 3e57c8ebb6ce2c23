import { labelsOf } from '../../fhir/filing.ts';
import { profileNames, profileUrl } from '../../fhir/names/profile-names.ts';
import type { Path } from '../../issues/path.ts';
import type { Reading } from '../reading.ts';
import {
  claimEqual,
  type Element,
  innerOf,
  innersOf,
  isObject,
  type ListedElement,
  ownProperty,
  peek,
} from './element.ts';

/** A resource of the bundle, or one contained in another. */
export interface Entry {
  readonly type: string;
  readonly resource: Element;
  /** The entry of the bundle; none for a contained resource. */
  readonly entry: Element | undefined;
  readonly fullUrl: string | undefined;
  readonly path: Path;
  /** Unlike that of any other resource of the bundle, and unlike any reference. */
  readonly name: string;
}

export interface Entries {
  readonly all: readonly Entry[];
  ofType(type: string): readonly Entry[];
  /**
   * The resource that a reference in `from` leads to; undefined where it leads out of the bundle or
   * to more than one.
   * @see https://hl7.org/fhir/R4/bundle.html#references
   */
  resolve(reference: string, from: Entry): Entry | undefined;
}

/** The entries of a bundle without those that may not be read. */
export function readEntries(bundle: Element, barred: ReadonlySet<object> = new Set()): Entries {
  const all = innersOf(bundle, 'entry')
    .flatMap(entryOf)
    .filter(({ resource }) => !barred.has(resource.json));
  const byUrl = indexed(all, ({ fullUrl }) => fullUrl);
  const byName = indexed(all, ({ type, resource }) => {
    const id = peek(resource, 'id');
    return typeof id === 'string' ? `${type}/${id}` : undefined;
  });
  const byType = new Map<string, Entry[]>();
  for (const entry of all) {
    const list = byType.get(entry.type);
    if (list === undefined) byType.set(entry.type, [entry]);
    else list.push(entry);
  }
  return {
    all,
    ofType: (type) => byType.get(type) ?? [],
    resolve: (reference, from) => {
      if (reference.startsWith('#')) return containedIn(from, reference.slice(1));
      const plain = reference.replace(/\/_history\/[^/]*$/, '');
      const [name] = /[A-Za-z]+\/[^/]+$/.exec(plain) ?? [];
      const base =
        from.fullUrl === undefined
          ? undefined
          : /^(https?:.*\/)[A-Za-z]+\/[^/]+$/.exec(from.fullUrl)?.[1];
      const absolute = name === plain && base !== undefined ? base + plain : plain;
      return byUrl.get(absolute) ?? (name === plain ? byName.get(plain) : undefined) ?? undefined;
    },
  };
}

function entryOf(entry: ListedElement): Entry[] {
  const { at } = entry;
  const json = peek(entry, 'resource');
  if (!isObject(json)) return [];
  const type = ownProperty(json, 'resourceType');
  if (typeof type !== 'string') return [];
  const fullUrl = peek(entry, 'fullUrl');
  return [
    {
      type,
      resource: { json, claims: entry.claims },
      entry,
      fullUrl: typeof fullUrl === 'string' ? fullUrl : undefined,
      path: ['entry', at, 'resource'],
      name: `\n${at}`,
    },
  ];
}

/** Null where several entries share a name, since it then leads to none of them. */
function indexed(
  all: readonly Entry[],
  nameOf: (entry: Entry) => string | undefined,
): Map<string, Entry | null> {
  const index = new Map<string, Entry | null>();
  for (const entry of all) {
    const name = nameOf(entry);
    if (name !== undefined) index.set(name, index.has(name) ? null : entry);
  }
  return index;
}

function containedIn(from: Entry, id: string): Entry | undefined {
  const list = peek(from.resource, 'contained');
  if (!Array.isArray(list)) return undefined;
  const at = list.findIndex((json: unknown) => isObject(json) && ownProperty(json, 'id') === id);
  const json: unknown = list[at];
  const type = isObject(json) ? ownProperty(json, 'resourceType') : undefined;
  if (!isObject(json) || typeof type !== 'string') return undefined;
  const { claims, json: holder } = from.resource;
  claims.claim(holder, 'contained');
  claims.claim(list, at);
  return {
    type,
    resource: { json, claims },
    entry: undefined,
    fullUrl: from.fullUrl,
    path: [...from.path, 'contained', at],
    name: `${from.name}#${at}`,
  };
}

/**
 * Claims what wraps a resource that is being read: its type and generated text, and its id and
 * address where they are those that an export gives it by its stable name.
 */
export function claimFrame(
  reading: Pick<Reading, 'idOf' | 'language' | 'base' | 'filing'>,
  entry: Entry,
  name: string | undefined,
): void {
  const { claims, json } = entry.resource;
  claims.claim(json, 'resourceType');
  claimProfiles(entry.resource, reading);
  claimEqual(entry.resource, 'language', reading.language.tag);
  if (name !== undefined) claimId(entry, reading.idOf(name));
  claimGeneratedText(entry.resource);
  if (entry.entry === undefined) return;
  claims.claim(entry.entry.json, 'resource');
  // How the resource was to be stored follows from what it is.
  if (isObject(peek(entry.entry, 'request'))) claims.claimAll(entry.entry.json, 'request');
}

/** Claims the id and address of a resource where they are those that an export gives it. */
export function claimId({ resource, entry, type, fullUrl }: Entry, id: string): void {
  claimEqual(resource, 'id', id);
  const own = fullUrl === `urn:uuid:${id}` || fullUrl?.endsWith(`/${type}/${id}`);
  if (own && entry !== undefined) entry.claims.claim(entry.json, 'fullUrl');
}

/** Claims profiles of ours, which follow from what the resource is, and the labels of the export. */
export function claimProfiles(
  resource: Element,
  { base, filing }: Pick<Reading, 'base' | 'filing'>,
): void {
  const meta = innerOf(resource, 'meta');
  const { security, tag } = labelsOf(filing);
  if (meta && security) claimEqual(meta, 'security', security);
  if (meta && tag) claimEqual(meta, 'tag', tag);
  const profiles = meta && peek(meta, 'profile');
  if (!Array.isArray(profiles)) return;
  profiles.forEach((profile: unknown, at) => {
    if (!profileNames.some((name) => profile === profileUrl(base, name))) return;
    resource.claims.claim(meta?.json ?? {}, 'profile');
    resource.claims.claim(profiles, at);
  });
}

/**
 * Text of the status `generated` holds nothing that the data does not.
 * @see https://hl7.org/fhir/R4/valueset-narrative-status.html
 */
export function claimGeneratedText(holder: Element): void {
  const text = peek(holder, 'text');
  if (isObject(text) && ownProperty(text, 'status') === 'generated')
    holder.claims.claimAll(holder.json, 'text');
}
