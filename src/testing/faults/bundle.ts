import { dataFaults, type Fault, type JsonObject, type Plant } from './fault.ts';
import { entries, inOne, requests, setting } from './place.ts';
import { cardinality, invariant, section } from './rules.ts';

const transactionRule = section('transaction', 'http.html#trules');

/** Faults against the rules of the types of bundle. */
export const bundleFaults: readonly Fault[] = dataFaults('bundle', [
  {
    id: 'total-outside-search',
    title: 'a bundle that is no search result has a total',
    rule: invariant('bdl-1', 'Bundle'),
    code: 'invariant',
    plant: atRoot({ total: 3 }),
  },
  {
    id: 'search-outside-search',
    title: 'an entry of a bundle that is no search result has a search score',
    rule: invariant('bdl-2', 'Bundle'),
    code: 'invariant',
    plant: setting(entries, 'search', { mode: 'match' }),
  },
  {
    id: 'request-outside-transaction',
    title: 'an entry of a collection or document has a request',
    rule: invariant('bdl-3', 'Bundle'),
    code: 'invariant',
    plant: ofType(
      ['collection', 'document'],
      setting(entries, 'request', {
        method: 'PUT',
        url: 'Observation/1',
      }),
    ),
  },
  {
    id: 'entry-without-request',
    title: 'an entry of a transaction has no request',
    rule: invariant('bdl-3', 'Bundle'),
    code: 'invariant',
    plant: ofType(['transaction'], (bundle, random) =>
      inOne(entries(bundle), random, (entry) => {
        delete entry['request'];
        return [];
      }),
    ),
  },
  {
    id: 'response-in-request',
    title: 'an entry has a response although nothing was answered',
    rule: invariant('bdl-4', 'Bundle'),
    code: 'invariant',
    versions: ['R4', 'R4B'],
    plant: setting(entries, 'response', { status: '200' }),
  },
  {
    id: 'response-in-collection',
    title: 'an entry of a collection or document has a response',
    rule: invariant('bdl-3a', 'Bundle', 'R5'),
    code: 'invariant',
    versions: ['R5'],
    plant: ofType(['collection', 'document'], setting(entries, 'response', { status: '200' })),
  },
  {
    id: 'entry-without-resource',
    title: 'an entry has a fullUrl and nothing else',
    rule: invariant('bdl-5', 'Bundle'),
    code: 'invariant',
    plant: ofType(
      ['collection'],
      addingEntry({
        fullUrl: 'urn:uuid:6f9619ff-8b86-4d11-b42d-00c04fc964ff',
      }),
    ),
  },
  {
    id: 'put-without-resource',
    title: 'a request stores a resource that is not there',
    rule: invariant('bdl-3c', 'Bundle', 'R5'),
    code: 'invariant',
    versions: ['R5'],
    plant: ofType(
      ['transaction'],
      addingEntry({
        fullUrl: 'urn:uuid:6f9619ff-8b86-4d11-b42d-00c04fc964ff',
        request: { method: 'PUT', url: 'Basic/6f9619ff-8b86-4d11-b42d-00c04fc964ff' },
      }),
    ),
  },
  {
    id: 'message-without-header',
    title: 'a bundle says that it is a message and does not begin with a header',
    rule: invariant('bdl-12', 'Bundle'),
    code: 'invariant',
    plant: ofType(['collection'], atRoot({ type: 'message' })),
  },
  {
    id: 'document-by-name-only',
    title: 'a collection says that it is a document and has no composition',
    rule: invariant('bdl-11', 'Bundle'),
    code: 'invariant',
    plant: ofType(
      ['collection'],
      atRoot({
        type: 'document',
        identifier: { system: 'https://harbour-clinic.example/documents', value: 'D-1' },
      }),
    ),
  },
  {
    id: 'put-to-two-of-one',
    title: 'two requests of a transaction store one resource',
    rule: transactionRule,
    code: 'duplicate',
    plant: ofType(['transaction'], (bundle, random) => {
      const [one, two] = random.some(requests(bundle), 2);
      if (one === undefined || two === undefined) return undefined;
      two.object['url'] = one.object['url'] ?? null;
      return [...two.path, 'url'];
    }),
  },
  {
    id: 'put-to-other-type',
    title: 'a request stores a resource under the name of another type',
    rule: section('update', 'http.html#update'),
    code: 'invalid',
    plant: ofType(
      ['transaction'],
      setting(requests, 'url', (url) =>
        String(url).replace(/^[A-Za-z]+/, (type) => (type === 'Basic' ? 'Flag' : 'Basic')),
      ),
    ),
  },
  {
    id: 'put-to-other-id',
    title: 'a request stores a resource under the id of another',
    rule: section('update', 'http.html#update'),
    code: 'invalid',
    plant: ofType(
      ['transaction'],
      setting(
        (bundle) => requests(bundle).filter(({ object }) => !String(object['url']).includes('?')),
        'url',
        (url) => String(url).replace(/[^/]*$/, '6f9619ff-8b86-4d11-b42d-00c04fc964ff'),
      ),
    ),
  },
  {
    id: 'put-to-no-type',
    title: 'the URL of a request names no type of resource',
    rule: section('update', 'http.html#update'),
    code: 'invalid',
    plant: ofType(['transaction'], setting(requests, 'url', 'Observations/1')),
  },
  {
    id: 'link-without-url',
    title: 'a link of the bundle leads nowhere',
    rule: cardinality('Bundle.link.url'),
    code: 'required',
    plant: atRoot({ link: [{ relation: 'self' }] }),
  },
  {
    id: 'no-entry-list',
    title: 'the entries of the bundle are an object',
    rule: section('json', 'json.html'),
    code: 'structure',
    plant: (bundle) => {
      const [first] = Array.isArray(bundle['entry']) ? bundle['entry'] : [];
      if (first === undefined) return undefined;
      bundle['entry'] = first;
      return ['entry'];
    },
  },
  {
    id: 'empty-entry',
    title: 'an entry is an empty object',
    rule: section('ele-1', 'element.html'),
    code: 'invariant',
    plant: addingEntry({}),
  },
]);

function atRoot(properties: JsonObject): Plant {
  return (bundle) => {
    Object.assign(bundle, structuredClone(properties));
    return [Object.keys(properties)[0] ?? ''];
  };
}

function ofType(types: readonly string[], plant: Plant): Plant {
  return (bundle, random) =>
    types.some((type) => type === bundle['type']) ? plant(bundle, random) : undefined;
}

function addingEntry(entry: JsonObject): Plant {
  return (bundle) => {
    const list = bundle['entry'];
    if (!Array.isArray(list)) return undefined;
    list.push(structuredClone(entry));
    return ['entry', list.length - 1];
  };
}
