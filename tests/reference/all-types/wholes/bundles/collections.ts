import type { Json } from '../../places.ts';
import { answer, bundle, entry, match, observation, patient, put, site, uuid } from './parts.ts';

/** Collections: names of entries, references between them, links. */
export const collectionCases: Record<string, Json> = {
  'collection-sound': bundle('collection', [entry(patient())]),
  'collection-without-entries': { resourceType: 'Bundle', type: 'collection' },
  'collection-of-unknown-type': bundle('banana', [entry(patient())]),
  'collection-of-empty-entry': bundle('collection', [{}]),
  'collection-of-url-alone': bundle('collection', [{ fullUrl: `${site}/Patient/p1` }]),
  'collection-with-total': bundle('collection', [entry(patient())], { total: 1 }),
  'collection-with-search': bundle('collection', [entry(patient(), match)]),
  'collection-with-request': bundle('collection', [entry(patient(), put)]),
  'collection-with-response': bundle('collection', [entry(patient(), answer('200'))]),
  'collection-without-fullUrl': bundle('collection', [{ resource: patient() }]),
  'collection-of-relative-fullUrl': bundle('collection', [
    { fullUrl: 'Patient/p1', resource: patient() },
  ]),
  'collection-of-fullUrl-in-words': bundle('collection', [
    { fullUrl: 'the patient', resource: patient() },
  ]),
  'collection-of-versioned-fullUrl': bundle('collection', [
    { fullUrl: `${site}/Patient/p1/_history/1`, resource: patient() },
  ]),
  'collection-of-fragment-fullUrl': bundle('collection', [
    { fullUrl: `${site}/Patient/p1#a`, resource: patient() },
  ]),
  'collection-of-other-id-in-fullUrl': bundle('collection', [
    { fullUrl: `${site}/Patient/p2`, resource: patient() },
  ]),
  'collection-of-other-type-in-fullUrl': bundle('collection', [
    { fullUrl: `${site}/Group/p1`, resource: patient() },
  ]),
  'collection-of-url-and-no-id': bundle(
    'collection',
    [{ fullUrl: `${site}/Patient/p1`, resource: patient('') }].map((one) => ({
      ...one,
      resource: { resourceType: 'Patient' },
    })),
  ),
  'collection-of-uuid': bundle('collection', [
    { fullUrl: uuid(1), resource: { resourceType: 'Patient' } },
  ]),
  'collection-of-uuid-and-id': bundle('collection', [{ fullUrl: uuid(1), resource: patient() }]),
  'collection-of-uuid-in-capitals': bundle('collection', [
    {
      fullUrl: uuid(1)
        .replace(/[a-f]/g, (one) => one.toUpperCase())
        .replace('urn:UUiD', 'urn:uuid'),
      resource: patient(),
    },
  ]),
  'collection-of-malformed-uuid': bundle('collection', [
    { fullUrl: 'urn:uuid:1', resource: patient() },
  ]),
  'collection-of-oid': bundle('collection', [{ fullUrl: 'urn:oid:1.2.3', resource: patient() }]),
  'collection-of-malformed-oid': bundle('collection', [
    { fullUrl: 'urn:oid:1..3', resource: patient() },
  ]),
  'collection-of-one-fullUrl-twice': bundle('collection', [entry(patient()), entry(patient())]),
  'collection-of-two-versions': bundle('collection', [
    entry(patient('p1', { meta: { versionId: '1' } })),
    entry(patient('p1', { meta: { versionId: '2' } })),
  ]),
  'collection-of-an-invalid-resource': bundle('collection', [
    entry(patient('p1', { gender: 'banana' })),
  ]),
  'collection-of-unknown-resource': bundle('collection', [
    entry({ resourceType: 'Banana', id: 'x' }),
  ]),
  'collection-in-collection': bundle('collection', [
    entry(bundle('collection', [entry(patient('p1', { gender: 'banana' }))])),
  ]),
  'collection-with-reference-inside': bundle('collection', [
    entry(patient()),
    entry(observation('o1', 'Patient/p1')),
  ]),
  'collection-with-reference-to-nothing': bundle('collection', [
    entry(observation('o1', 'Patient/p9')),
  ]),
  'collection-with-uuid-to-nothing': bundle('collection', [entry(observation('o1', uuid(9)))]),
  'collection-with-reference-to-wrong-type': bundle('collection', [
    { fullUrl: uuid(1), resource: { resourceType: 'Medication' } },
    entry(observation('o1', uuid(1))),
  ]),
  'collection-with-relative-from-uuid': bundle('collection', [
    entry(patient()),
    { fullUrl: uuid(1), resource: observation('o1', 'Patient/p1') },
  ]),
  'collection-with-conditional-reference': bundle('collection', [
    entry(observation('o1', 'Patient?identifier=1')),
  ]),
  'collection-with-absolute-reference': bundle('collection', [
    entry(patient()),
    entry(observation('o1', `${site}/Patient/p1`)),
  ]),
  'collection-with-contained-of-other-entry': bundle('collection', [
    entry(
      patient('p1', {
        contained: [{ resourceType: 'Organization', id: 'org', name: 'x' }],
        managingOrganization: { reference: '#org' },
      }),
    ),
    entry(observation('o1', '#org')),
  ]),
  'collection-with-next': bundle('collection', [entry(patient())], {
    link: [{ relation: 'next', url: `${site}?page=2` }],
  }),
  'collection-with-unknown-relation': bundle('collection', [entry(patient())], {
    link: [{ relation: 'banana', url: `${site}` }],
  }),
  'collection-with-link-without-url': bundle('collection', [entry(patient())], {
    link: [{ relation: 'self' }],
  }),
  'collection-with-extension': {
    ...bundle('collection', [entry(patient())]),
    extension: [{ url: `${site}/e`, valueString: 'x' }],
  },
  'collection-with-entry-extension': bundle('collection', [
    entry(patient(), { extension: [{ url: `${site}/e`, valueString: 'x' }] }),
  ]),
};
