import type { Json } from '../../places.ts';
import {
  answer,
  bundle,
  entry,
  match,
  observation,
  patient,
  request,
  site,
  uuid,
} from './parts.ts';

const self = { link: [{ relation: 'self', url: `${site}/Patient?name=x` }] };

/** Answers to a search. */
export const searchSetCases: Record<string, Json> = {
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
};
