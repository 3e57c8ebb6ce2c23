import { dataFaults, type Fault, type JsonObject } from './fault.ts';
import { entries, having, type Place, resources, setting, without } from './place.ts';
import { invariant, primitive, section } from './rules.ts';

const fullUrlRule = section('Bundle.entry.fullUrl', 'bundle-definitions.html#Bundle.entry.fullUrl');
const other = '6f9619ff-8b86-4d11-b42d-00c04fc964ff';

/** Faults of ids and of the URLs under which resources stand in a bundle. */
export const identityFaults: readonly Fault[] = dataFaults('identity', [
  {
    id: 'id-with-underscore',
    title: 'an id has a character that ids do not have',
    rule: primitive('id'),
    code: 'value',
    plant: setting(unreferenced, 'id', 'mole_1'),
  },
  {
    id: 'id-too-long',
    title: 'an id is longer than 64 characters',
    rule: primitive('id'),
    code: 'value',
    plant: setting(unreferenced, 'id', 'a'.repeat(65)),
  },
  {
    id: 'id-is-number',
    title: 'an id is a number',
    rule: primitive('id'),
    code: 'structure',
    plant: setting(unreferenced, 'id', 417),
  },
  {
    id: 'id-and-full-url-disagree',
    title: 'the id of a resource is not the one in its fullUrl',
    rule: fullUrlRule,
    code: 'invalid',
    plant: addingEntry(() => ({ fullUrl: 'https://harbour-clinic.example/fhir/Basic/remark-7' })),
  },
  {
    id: 'full-url-twice',
    title: 'two entries have one fullUrl',
    rule: invariant('bdl-7', 'Bundle'),
    code: 'invariant',
    plant: (bundle, random) => {
      const [one, two] = random.some(having(entries(bundle), 'fullUrl'), 2);
      if (one === undefined || two === undefined) return undefined;
      two.object['fullUrl'] = one.object['fullUrl'] ?? null;
      return [...two.path, 'fullUrl'];
    },
  },
  {
    id: 'entry-twice',
    title: 'one entry stands twice',
    rule: invariant('bdl-7', 'Bundle'),
    code: 'invariant',
    plant: (bundle, random) => {
      const list = bundle['entry'];
      if (!Array.isArray(list) || list.length === 0) return undefined;
      list.push(structuredClone(random.pick(list)));
      return ['entry', list.length - 1];
    },
  },
  {
    id: 'full-url-with-version',
    title: 'a fullUrl names a version of the resource',
    rule: invariant('bdl-8', 'Bundle'),
    code: 'invariant',
    plant: addingEntry((id) => ({
      fullUrl: `https://harbour-clinic.example/fhir/Basic/${id}/_history/2`,
    })),
  },
  {
    id: 'full-url-relative',
    title: 'a fullUrl is relative',
    rule: fullUrlRule,
    code: 'value',
    plant: addingEntry((id) => ({ fullUrl: `Basic/${id}` })),
  },
  {
    id: 'full-url-bare-uuid',
    title: 'a fullUrl is a UUID without urn:uuid:',
    rule: fullUrlRule,
    code: 'value',
    plant: addingEntry((id) => ({ fullUrl: id })),
  },
  {
    id: 'full-url-malformed-uuid',
    title: 'a fullUrl is no UUID behind urn:uuid:',
    rule: primitive('uuid'),
    code: 'value',
    plant: addingEntry(() => ({ fullUrl: 'urn:uuid:basic-1' }), 'basic-1'),
  },
  {
    id: 'no-full-url',
    title: 'an entry without fullUrl',
    rule: fullUrlRule,
    code: 'required',
    plant: (bundle, random) =>
      bundle['type'] === 'transaction'
        ? undefined
        : without((whole) => entries(whole).filter(isUnreferenced), 'fullUrl')(bundle, random),
  },
]);

/** Provenances: nothing refers to them, so a change of their id leaves no reference hanging. */
function unreferenced(bundle: JsonObject): Place[] {
  return resources(bundle, 'Provenance').filter(({ object }) => object['id'] !== undefined);
}

function isUnreferenced({ object }: Place): boolean {
  const { resource } = object;
  const plain = typeof resource === 'object' && resource !== null && !Array.isArray(resource);
  return plain && resource['resourceType'] === 'Provenance';
}

/** One more entry, sound but for its fullUrl. */
function addingEntry(
  head: (id: string) => JsonObject,
  id: string = other,
): (bundle: JsonObject) => (string | number)[] | undefined {
  return (bundle) => {
    const list = bundle['entry'];
    // In a document an entry that nothing leads to would be a second fault.
    if (!Array.isArray(list) || bundle['type'] === 'document') return undefined;
    const basic = { resourceType: 'Basic', id, code: { text: 'remark of the clinic' } };
    const request = bundle['type'] === 'transaction' && {
      request: { method: 'PUT', url: `Basic/${id}` },
    };
    list.push({ ...head(id), resource: basic, ...request });
    return ['entry', list.length - 1, 'fullUrl'];
  };
}
