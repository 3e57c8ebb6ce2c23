import type { Json } from '../../places.ts';
import { answer, bundle, entry, match, patient, put, request, site } from './parts.ts';

/** Answers to transactions, and histories. */
export const responseAndHistoryCases: Record<string, Json> = {
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
};
