import type { FhirRelease } from '../../../corpus.ts';
import type { Json } from '../../places.ts';

export const patient = (id: string | undefined = 'p1', more: Json = {}): Json => ({
  resourceType: 'Patient',
  ...(id === undefined ? {} : { id }),
  ...more,
});
export const site = 'http://vineyard.example/fhir';
export const uuid = (last: number): string => `urn:uuid:c757873d-ec9a-4326-a141-556f4323952${last}`;
export const entry = (resource: Json, more: Json = {}): Json => ({
  fullUrl: `${site}/${resource['resourceType']}/${resource['id']}`,
  resource,
  ...more,
});
export const observation = (id: string, subject: string, more: Json = {}): Json => ({
  resourceType: 'Observation',
  id,
  status: 'final',
  code: { text: 'Skin' },
  subject: { reference: subject },
  ...more,
});
export const bundle = (type: string, entries: readonly Json[], more: Json = {}): Json => ({
  resourceType: 'Bundle',
  id: 'b1',
  type,
  ...more,
  entry: entries,
});
export const identified = {
  identifier: { system: 'urn:ietf:rfc:3986', value: uuid(0) },
  timestamp: '2026-03-04T10:00:00Z',
};
export const request = (method: string, url: string, more: Json = {}): Json => ({
  request: { method, url, ...more },
});

export function composition(version: FhirRelease, more: Json = {}): Json {
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

/** The entry of a bundle that writes a patient. */
export const put = request('PUT', 'Patient/p1');
/** The entry of a bundle that a search found. */
export const match = { search: { mode: 'match' } };
/** The entry of a bundle that answers a request. */
export const answer = (status: string, more: Json = {}): Json => ({
  response: { status, ...more },
});
export const document = (entries: readonly Json[], more: Json = {}): Json =>
  bundle('document', entries, { ...identified, ...more });
