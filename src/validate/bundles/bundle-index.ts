import { isObject, type JsonObject, listOf, textOf } from '../walk/json.ts';

/** The entries of one bundle, by everything that a reference can name them with. */
export interface BundleIndex {
  readonly bundle: JsonObject;
  readonly type: string | undefined;
  readonly entries: readonly Entry[];
  readonly byFullUrl: ReadonlyMap<string, Entry>;
  /** `Patient/1`; the first of its kind. */
  readonly byTypeAndId: ReadonlyMap<string, Entry>;
  /** By either of the two, a space and the version of the resource. */
  readonly byVersion: ReadonlyMap<string, Entry>;
  /** Of the resources only type and id are held, but for that of the entry that is looked at. */
  readonly onlyIds?: {
    /** Whether a rule asked for more of another entry. */
    missed: boolean;
  };
}

export interface Entry {
  readonly number: number;
  readonly fullUrl: string | undefined;
  /** Whole; of a bundle that is looked at entry by entry its outline, but while it is looked at. */
  resource: JsonObject | undefined;
  /** `https://clinic.example/fhir/` of a fullUrl that names type and id after it. */
  readonly base: string | undefined;
  /** Entries that this one refers to, and places of those references; filled by the walk. */
  readonly links: Link[];
}

export interface Link {
  readonly to: Entry;
  readonly path: readonly (string | number)[];
}

/** One pass over the entries; nothing is searched for again later. */
export function createIndex(bundle: JsonObject): BundleIndex {
  const byFullUrl = new Map<string, Entry>();
  const byTypeAndId = new Map<string, Entry>();
  const byVersion = new Map<string, Entry>();
  // A list that was not read from a text can have holes, over which `map` would pass.
  const entries = Array.from(listOf(bundle['entry']), (each, number): Entry => {
    const holder = isObject(each) ? each : {};
    const fullUrl = textOf(holder['fullUrl']);
    const resource = isObject(holder['resource']) ? holder['resource'] : undefined;
    const base = fullUrl === undefined ? undefined : restBase(fullUrl);
    const entry: Entry = { number, fullUrl, resource, base, links: [] };
    if (fullUrl !== undefined && !byFullUrl.has(fullUrl)) byFullUrl.set(fullUrl, entry);
    const key = `${textOf(resource?.['resourceType'])}/${textOf(resource?.['id'])}`;
    if (!byTypeAndId.has(key)) byTypeAndId.set(key, entry);
    const version = versionOf(resource);
    if (version !== undefined) {
      for (const name of [fullUrl, key]) byVersion.set(`${name} ${version}`, entry);
    }
    return entry;
  });
  return { bundle, type: textOf(bundle['type']), entries, byFullUrl, byTypeAndId, byVersion };
}

/** The version that a resource says it is. */
export function versionOf(resource: JsonObject | undefined): string | undefined {
  const meta = resource?.['meta'];
  return isObject(meta) ? textOf(meta['versionId']) : undefined;
}

const restUrl = /^(https?:\/\/\S+\/)[A-Z][A-Za-z]+\/[A-Za-z0-9\-.]{1,64}$/;

function restBase(fullUrl: string): string | undefined {
  return restUrl.exec(fullUrl)?.[1];
}
