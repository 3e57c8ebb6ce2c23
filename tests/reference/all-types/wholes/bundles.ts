import type { FhirRelease } from '../../corpus.ts';
import type { Json } from '../places.ts';

const patient = (id: string | undefined = 'p1', more: Json = {}): Json => ({
  resourceType: 'Patient',
  ...(id === undefined ? {} : { id }),
  ...more,
});
const site = 'http://vineyard.example/fhir';
const uuid = (last: number): string => `urn:uuid:c757873d-ec9a-4326-a141-556f4323952${last}`;
const entry = (resource: Json, more: Json = {}): Json => ({
  fullUrl: `${site}/${resource['resourceType']}/${resource['id']}`,
  resource,
  ...more,
});
const observation = (id: string, subject: string, more: Json = {}): Json => ({
  resourceType: 'Observation',
  id,
  status: 'final',
  code: { text: 'Skin' },
  subject: { reference: subject },
  ...more,
});
const bundle = (type: string, entries: readonly Json[], more: Json = {}): Json => ({
  resourceType: 'Bundle',
  id: 'b1',
  type,
  ...more,
  entry: entries,
});
const identified = {
  identifier: { system: 'urn:ietf:rfc:3986', value: uuid(0) },
  timestamp: '2026-03-04T10:00:00Z',
};
const request = (method: string, url: string, more: Json = {}): Json => ({
  request: { method, url, ...more },
});

function composition(version: FhirRelease, more: Json = {}): Json {
  return {
    resourceType: 'Composition',
    id: 'c1',
    status: 'final',
    type: { text: 'Yearly check' },
    date: '2026-03-04',
    title: 'Yearly check',
    author: [{ reference: 'Patient/p1' }],
    subject: version === 'R5' ? [{ reference: 'Patient/p1' }] : { reference: 'Patient/p1' },
    ...more,
  };
}

/** Whole bundles, sound and broken, by name. */
export function bundleCases(version: FhirRelease): Record<string, Json> {
  const self = { link: [{ relation: 'self', url: `${site}/Patient?name=x` }] };
  const match = { search: { mode: 'match' } };
  const put = request('PUT', 'Patient/p1');
  const r5 = version === 'R5';
  const answer = (status: string, more: Json = {}): Json => ({ response: { status, ...more } });
  const document = (entries: readonly Json[], more: Json = {}): Json =>
    bundle('document', entries, { ...identified, ...more });
  const event = { eventCoding: { system: 'http://vineyard.example/events', code: 'x' } };
  const header: Json = {
    resourceType: 'MessageHeader',
    id: 'm1',
    ...event,
    source: r5
      ? { endpointUrl: 'http://vineyard.example' }
      : { endpoint: 'http://vineyard.example' },
  };
  const cases: Record<string, Json> = {
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
    'searchset-sound': bundle('searchset', [entry(patient(), match)], { ...self, total: 1 }),
    'searchset-without-self': bundle('searchset', [entry(patient(), match)]),
    'searchset-without-mode': bundle('searchset', [entry(patient())], self),
    'searchset-of-other-type': bundle(
      'searchset',
      [entry(observation('o1', 'Patient/p1'), match)],
      self,
    ),
    'searchset-including-other-type': bundle(
      'searchset',
      [entry(observation('o1', 'Patient/p1'), { search: { mode: 'include' } })],
      self,
    ),
    'searchset-of-unknown-mode': bundle(
      'searchset',
      [entry(patient(), { search: { mode: 'banana' } })],
      self,
    ),
    'searchset-of-outcome': bundle(
      'searchset',
      [
        {
          fullUrl: uuid(1),
          resource: {
            resourceType: 'OperationOutcome',
            issue: [{ severity: 'warning', code: 'processing' }],
          },
          search: { mode: 'outcome' },
        },
      ],
      self,
    ),
    'searchset-of-outcome-that-is-a-patient': bundle(
      'searchset',
      [entry(patient(), { search: { mode: 'outcome' } })],
      self,
    ),
    'searchset-without-id': bundle(
      'searchset',
      [{ fullUrl: uuid(1), resource: { resourceType: 'Patient' }, search: { mode: 'match' } }],
      self,
    ),
    'searchset-without-resource': bundle(
      'searchset',
      [{ fullUrl: `${site}/Patient/p1`, ...match }],
      self,
    ),
    'searchset-with-request': bundle(
      'searchset',
      [entry(patient(), { ...match, ...request('GET', 'Patient/p1') })],
      self,
    ),
    'searchset-with-response': bundle(
      'searchset',
      [entry(patient(), { ...match, ...answer('200') })],
      self,
    ),
    'searchset-with-two-selves': bundle('searchset', [entry(patient(), match)], {
      link: [...self.link, ...self.link],
    }),
    'searchset-with-two-next': bundle('searchset', [entry(patient(), match)], {
      link: [
        ...self.link,
        { relation: 'next', url: `${site}?a` },
        { relation: 'next', url: `${site}?b` },
      ],
    }),
    'searchset-of-score-above-one': bundle(
      'searchset',
      [entry(patient(), { search: { mode: 'match', score: 2 } })],
      self,
    ),
    'searchset-of-negative-total': bundle('searchset', [entry(patient(), match)], {
      ...self,
      total: -1,
    }),
    'searchset-empty': { resourceType: 'Bundle', type: 'searchset', total: 0, ...self },
    'transaction-sound': bundle('transaction', [entry(patient(), put)]),
    'transaction-without-request': bundle('transaction', [entry(patient())]),
    'transaction-with-response': bundle('transaction', [
      entry(patient(), { ...put, ...answer('200') }),
    ]),
    'transaction-without-method': bundle('transaction', [
      entry(patient(), { request: { url: 'Patient/p1' } }),
    ]),
    'transaction-without-url': bundle('transaction', [
      entry(patient(), { request: { method: 'PUT' } }),
    ]),
    'transaction-of-unknown-method': bundle('transaction', [
      entry(patient(), request('SEND', 'Patient/p1')),
    ]),
    'transaction-of-get-with-resource': bundle('transaction', [
      entry(patient(), request('GET', 'Patient/p1')),
    ]),
    'transaction-of-delete': bundle('transaction', [request('DELETE', 'Patient/p1')]),
    'transaction-of-put-without-resource': bundle('transaction', [request('PUT', 'Patient/p1')]),
    'transaction-of-post-without-resource': bundle('transaction', [request('POST', 'Patient')]),
    'transaction-of-post': bundle('transaction', [
      { fullUrl: uuid(1), resource: { resourceType: 'Patient' }, ...request('POST', 'Patient') },
    ]),
    'transaction-of-post-without-fullUrl': bundle('transaction', [
      { resource: { resourceType: 'Patient' }, ...request('POST', 'Patient') },
    ]),
    'transaction-of-put-without-fullUrl': bundle('transaction', [{ resource: patient(), ...put }]),
    'transaction-of-conditional-create': bundle('transaction', [
      {
        fullUrl: uuid(1),
        resource: { resourceType: 'Patient' },
        ...request('POST', 'Patient', { ifNoneExist: 'identifier=1' }),
      },
    ]),
    'transaction-of-conditional-update': bundle('transaction', [
      {
        fullUrl: uuid(1),
        resource: { resourceType: 'Patient' },
        ...request('PUT', 'Patient?identifier=1'),
      },
    ]),
    'transaction-of-url-in-words': bundle('transaction', [
      entry(patient(), request('PUT', 'the patient 1')),
    ]),
    'transaction-of-absolute-url': bundle('transaction', [
      entry(patient(), request('PUT', `${site}/Patient/p1`)),
    ]),
    'transaction-with-conditional-reference': bundle('transaction', [
      {
        fullUrl: uuid(1),
        resource: observation('o1', 'Patient?identifier=http://vineyard.example|1'),
        ...request('POST', 'Observation'),
      },
    ]),
    'transaction-with-conditional-reference-without-value': bundle('transaction', [
      {
        fullUrl: uuid(1),
        resource: observation('o1', 'Patient?identifier='),
        ...request('POST', 'Observation'),
      },
    ]),
    'transaction-with-conditional-reference-to-wrong-type': bundle('transaction', [
      {
        fullUrl: uuid(1),
        resource: observation('o1', 'Medication?identifier=1'),
        ...request('POST', 'Observation'),
      },
    ]),
    'transaction-with-conditional-reference-to-unknown-type': bundle('transaction', [
      {
        fullUrl: uuid(1),
        resource: observation('o1', 'Banana?identifier=1'),
        ...request('POST', 'Observation'),
      },
    ]),
    'transaction-of-if-match': bundle('transaction', [
      entry(patient(), request('PUT', 'Patient/p1', { ifMatch: 'W/"1"' })),
    ]),
    'batch-sound': bundle('batch', [request('GET', 'Patient?name=x')]),
    'batch-without-request': bundle('batch', [entry(patient())]),
    'transaction-response-sound': bundle('transaction-response', [
      answer('201 Created', { location: 'Patient/p1/_history/1' }),
    ]),
    'transaction-response-without-status': bundle('transaction-response', [
      { response: { location: 'Patient/p1' } },
    ]),
    'transaction-response-without-response': bundle('transaction-response', [entry(patient())]),
    'transaction-response-with-request': bundle('transaction-response', [
      { ...answer('200'), ...put },
    ]),
    'transaction-response-with-outcome': bundle('transaction-response', [
      answer('400', {
        outcome: {
          resourceType: 'OperationOutcome',
          issue: [{ severity: 'error', code: 'banana' }],
        },
      }),
    ]),
    'transaction-response-of-status-in-words': bundle('transaction-response', [answer('fine')]),
    'history-sound': bundle(
      'history',
      [
        entry(patient('p1', { meta: { versionId: '2' } }), {
          ...put,
          ...answer('200', { lastModified: '2026-03-04T10:00:00Z', etag: 'W/"2"' }),
        }),
      ],
      { total: 1 },
    ),
    'history-of-two-versions': bundle(
      'history',
      ['2', '1'].map((versionId) =>
        entry(patient('p1', { meta: { versionId } }), { ...put, ...answer('200') }),
      ),
    ),
    'history-of-one-version-twice': bundle(
      'history',
      ['1', '1'].map((versionId) =>
        entry(patient('p1', { meta: { versionId } }), { ...put, ...answer('200') }),
      ),
    ),
    'history-with-deletion': bundle('history', [
      { fullUrl: `${site}/Patient/p1`, ...request('DELETE', 'Patient/p1'), ...answer('204') },
    ]),
    'history-without-request': bundle('history', [entry(patient(), answer('200'))]),
    'history-without-response': bundle('history', [entry(patient(), put)]),
    'history-of-put-without-resource': bundle('history', [
      { fullUrl: `${site}/Patient/p1`, ...put, ...answer('200') },
    ]),
    'history-with-search': bundle('history', [
      entry(patient(), { ...put, ...answer('200'), ...match }),
    ]),
    'history-of-patch': bundle('history', [
      entry(patient(), { ...request('PATCH', 'Patient/p1'), ...answer('200') }),
    ]),
    'document-sound': document([entry(composition(version)), entry(patient())]),
    'document-without-identifier': bundle(
      'document',
      [entry(composition(version)), entry(patient())],
      { timestamp: identified.timestamp },
    ),
    'document-without-system': document([entry(composition(version)), entry(patient())], {
      identifier: { value: '1' },
    }),
    'document-without-timestamp': bundle(
      'document',
      [entry(composition(version)), entry(patient())],
      { identifier: identified.identifier },
    ),
    'document-of-patient-first': document([entry(patient()), entry(composition(version))]),
    'document-without-entries': document([]),
    'document-without-subject': document([entry(composition(version))]),
    'document-with-orphan': document([
      entry(composition(version)),
      entry(patient()),
      entry(patient('p2')),
    ]),
    'document-with-two-compositions': document([
      entry(composition(version)),
      entry(patient()),
      entry(composition(version, { id: 'c2' })),
    ]),
    'document-with-backward-link': document([
      entry(composition(version)),
      entry(patient()),
      entry(observation('o1', 'Patient/p1')),
    ]),
    'document-with-section-entry-missing': document([
      entry(
        composition(version, {
          section: [{ title: 'x', entry: [{ reference: 'Observation/o9' }] }],
        }),
      ),
      entry(patient()),
    ]),
    'document-with-empty-section': document([
      entry(composition(version, { section: [{ title: 'x' }] })),
      entry(patient()),
    ]),
    'document-with-section-of-reason-and-entry': document([
      entry(
        composition(version, {
          section: [
            { title: 'x', entry: [{ reference: 'Patient/p1' }], emptyReason: { text: 'none' } },
          ],
        }),
      ),
      entry(patient()),
    ]),
    'document-with-request': document([entry(composition(version), put), entry(patient())]),
    'document-with-mixed-fullUrls': document([
      { fullUrl: uuid(1), resource: composition(version) },
      entry(patient()),
    ]),
    'document-with-attester-missing': document([
      entry(
        composition(version, {
          attester: [
            {
              mode: r5
                ? {
                    coding: [
                      { system: 'http://hl7.org/fhir/composition-attestation-mode', code: 'legal' },
                    ],
                  }
                : 'legal',
              party: { reference: 'Practitioner/x' },
            },
          ],
        }),
      ),
      entry(patient()),
    ]),
    'message-sound': bundle('message', [entry(header)], { timestamp: identified.timestamp }),
    'message-of-patient-first': bundle('message', [entry(patient()), entry(header)]),
    'message-without-focus': bundle('message', [
      entry({ ...header, focus: [{ reference: 'Patient/p9' }] }),
    ]),
    'message-with-focus': bundle('message', [
      entry({ ...header, focus: [{ reference: 'Patient/p1' }] }),
      entry(patient()),
    ]),
    'message-with-orphan': bundle('message', [entry(header), entry(patient())]),
    'message-without-event': bundle('message', [entry({ ...header, eventCoding: undefined })]),
    'message-of-two-events': bundle(
      'message',
      [entry({ ...header, eventUri: 'http://vineyard.example/e' })].map((one) =>
        r5 ? { ...one, resource: { ...header, eventCanonical: 'http://vineyard.example/e' } } : one,
      ),
    ),
    'signature-sound': bundle('collection', [entry(patient())], {
      signature: {
        type: [{ system: 'urn:iso-astm:E1762-95:2013', code: '1.2.840.10065.1.12.1.1' }],
        when: '2026-03-04T10:00:00Z',
        who: { reference: 'Patient/p1' },
      },
    }),
    'signature-of-unknown-format': bundle('collection', [entry(patient())], {
      signature: {
        type: [{ system: 'urn:iso-astm:E1762-95:2013', code: '1.2.840.10065.1.12.1.1' }],
        when: '2026-03-04T10:00:00Z',
        who: { reference: 'Patient/p1' },
        sigFormat: 'banana',
      },
    }),
    'signature-by-wrong-type': bundle('collection', [entry(patient())], {
      signature: {
        type: [{ system: 'urn:iso-astm:E1762-95:2013', code: '1.2.840.10065.1.12.1.1' }],
        when: '2026-03-04T10:00:00Z',
        who: { reference: 'Observation/p1' },
      },
    }),
  };
  if (r5) {
    cases['notification'] = bundle('subscription-notification', [
      entry({
        resourceType: 'SubscriptionStatus',
        id: 's1',
        type: 'handshake',
        subscription: { reference: 'Subscription/1' },
      }),
    ]);
    cases['notification-of-patient-first'] = bundle('subscription-notification', [
      entry(patient()),
    ]);
    cases['issues-of-error'] = bundle('collection', [entry(patient())], {
      issues: {
        resourceType: 'OperationOutcome',
        issue: [{ severity: 'error', code: 'processing' }],
      },
    });
    cases['issues-of-warning'] = bundle('collection', [entry(patient())], {
      issues: {
        resourceType: 'OperationOutcome',
        issue: [{ severity: 'warning', code: 'processing' }],
      },
    });
    cases['document-with-issues'] = document([entry(composition(version)), entry(patient())], {
      issues: {
        resourceType: 'OperationOutcome',
        issue: [{ severity: 'warning', code: 'processing' }],
      },
    });
  }
  return cases;
}
