import type { Json } from '../../places.ts';
import { answer, bundle, entry, observation, patient, put, request, site, uuid } from './parts.ts';

/** Transactions and batches. */
export const transactionCases: Record<string, Json> = {
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
};
