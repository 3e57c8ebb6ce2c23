import { isPlainObject, plainDataIssues } from '../data/plain-data.ts';
import { DECIMAL_TEXT, type DecimalCarrier } from '../fhir/json/decimal.ts';
import { toJson } from '../fhir/json/to-json.ts';
import { failure, issue, type Outcome, success } from '../issues/issue.ts';

/** How a signature can be made of the same record again. */
const leftOut: ReadonlySet<string> = new Set(['text', 'meta', 'id']);

/**
 * Writes what a signature of a record is made over: all its resources but the Provenance, which
 * holds the signature, as a Bundle of the type `collection`, whose entries stand in the order of
 * their `fullUrl`, in FHIR's canonical JSON with the variant `static` (properties in alphabetical
 * order, no whitespace, neither narrative nor `meta`). Resources are named by the ids that they were
 * exported with, `urn:uuid:`, also where a server has made `Observation/…` of it, and have no `id`
 * besides. So a record can be verified as file, as transaction and from a server that takes the ids
 * of the client. Decimals keep their digits where the bundle was parsed with `fromJson`.
 *
 * @param bundle The record as exported, of any version and type.
 * @returns The text; its bytes in UTF-8 are what is signed. It fails for what is no bundle, and for
 *   an entry without `fullUrl`.
 * @example
 * const text = orThrow('write what is signed', contentToSign(bundle));
 * @see https://hl7.org/fhir/R4/json.html#canonical
 */
export function contentToSign(bundle: unknown): Outcome<string> {
  const unfit = plainDataIssues(bundle);
  if (unfit.length > 0) return failure(unfit);
  if (!isPlainObject(bundle) || bundle['resourceType'] !== 'Bundle') {
    return failure([issue('wrong-type', ['resourceType'], { reason: 'not-a-bundle' })]);
  }
  const entries = Array.isArray(bundle['entry']) ? bundle['entry'] : [];
  const named = entries.flatMap((entry: unknown) => namedEntry(entry) ?? []);
  const resources = entries.filter((entry: unknown) => isPlainObject(entry) && 'resource' in entry);
  if (named.length === 0 || named.length < resources.length) {
    return failure([issue('missing-property', ['entry'], { reason: 'exam' })]);
  }
  const held = new Set(named.map(({ name }) => name));
  const entry = named
    .filter(({ resource }) => resource['resourceType'] !== 'Provenance')
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .map(({ name, resource }) => ({
      fullUrl: `urn:uuid:${name}`,
      resource: canonical(resource, held, true),
    }));
  return success(toJson({ entry, resourceType: 'Bundle', type: 'collection' }));
}

interface Named {
  readonly name: string;
  readonly resource: Readonly<Record<string, unknown>>;
}

function namedEntry(entry: unknown): Named | undefined {
  if (!isPlainObject(entry) || !isPlainObject(entry['resource'])) return undefined;
  const name = nameIn(entry['fullUrl']);
  return name === undefined ? undefined : { name, resource: entry['resource'] };
}

/** The last part of a reference or address, without the version that a server adds. */
function nameIn(url: unknown): string | undefined {
  if (typeof url !== 'string') return undefined;
  return /([^/:]+)$/.exec(url.replace(/\/_history\/[^/]*$/, ''))?.[1];
}

function canonical(value: unknown, held: ReadonlySet<string>, isResource = false): unknown {
  if (Array.isArray(value)) return value.map((one: unknown) => canonical(one, held));
  if (!isPlainObject(value)) return value;
  const sorted: Record<string, unknown> & DecimalCarrier = {};
  for (const name of Object.keys(value).sort()) {
    if (isResource && leftOut.has(name)) continue;
    sorted[name] = name === 'reference' ? named(value[name], held) : canonical(value[name], held);
  }
  const digits = (value as DecimalCarrier)[DECIMAL_TEXT];
  if (digits !== undefined) sorted[DECIMAL_TEXT] = digits;
  return sorted;
}

function named(reference: unknown, held: ReadonlySet<string>): unknown {
  const name = nameIn(reference);
  return name !== undefined && held.has(name) ? `urn:uuid:${name}` : reference;
}
