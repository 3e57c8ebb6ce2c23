import { describe, expect, test } from 'vitest';
import { validateBundle } from '../../../src/validate/versions/r4.ts';

// The stage of bundles, in words of https://hl7.org/fhir/R4/bundle.html, documents.html and http.html.

const base = 'https://clinic.example/fhir';
const text = {
  status: 'generated',
  div: '<div xmlns="http://www.w3.org/1999/xhtml">tender</div>',
};

interface Entry {
  readonly fullUrl?: string;
  readonly resource?: { readonly resourceType: string; readonly [name: string]: unknown };
  readonly request?: object;
}

function patient(id: string, more: object = {}): Entry & { readonly resource: object } {
  return {
    fullUrl: `${base}/Patient/${id}`,
    resource: { resourceType: 'Patient', id, text, ...more },
  };
}

function observation(id: string, more: object = {}): Entry {
  const code = { text: 'Tenderness' };
  const resource = { resourceType: 'Observation', id, text, status: 'final', code, ...more };
  return { fullUrl: `${base}/Observation/${id}`, resource };
}

/** Condition is a type whose definition the library does not hold. */
function condition(id: string, more: object = {}): Entry {
  return {
    fullUrl: `${base}/Condition/${id}`,
    resource: { resourceType: 'Condition', id, text, ...more },
  };
}

function composition(...entries: readonly string[]): Entry {
  const resource = {
    resourceType: 'Composition',
    id: 'c',
    text,
    status: 'final',
    type: { text: 'Examination' },
    subject: { reference: 'Patient/p' },
    date: '2026-03-02',
    author: [{ reference: 'Patient/p' }],
    title: 'Examination',
    section: [
      { title: 'Face', text, entry: ['Patient/p', ...entries].map((reference) => ({ reference })) },
    ],
  };
  return { fullUrl: `${base}/Composition/c`, resource };
}

function bundle(type: string, entry: readonly Entry[]): object {
  const named = type === 'document' && {
    identifier: { system: 'https://clinic.example/documents', value: '1' },
    timestamp: '2026-03-02T10:00:00Z',
  };
  return { resourceType: 'Bundle', type, ...named, entry };
}

/** Code, severity and place of what is said, but for types that are not held. */
function told(value: object): string[] {
  return validateBundle(value)
    .issues.filter(({ code }) => code !== 'unchecked-resource')
    .map(({ code, severity, path }) => `${severity} ${code} ${path.join('.')}`);
}

const put = (url: string): object => ({ request: { method: 'PUT', url } });
const post = (url: string): object => ({ request: { method: 'POST', url } });

const cases: readonly [rule: string, value: object, ...told: string[]][] = [
  ['bundle.html#bundle-unique: sound', bundle('collection', [patient('p')])],
  [
    'bundle.html#bundle-unique: an entry has a fullUrl',
    bundle('collection', [{ resource: patient('p').resource }]),
    'error missing-property entry.0.fullUrl',
  ],
  [
    'bundle.html#bundle-unique: a fullUrl is absolute',
    bundle('collection', [{ ...patient('p'), fullUrl: 'Patient/p' }]),
    'error invalid-value entry.0.fullUrl',
  ],
  [
    'Bundle.entry.fullUrl: a fullUrl of a server ends in type and id',
    bundle('collection', [{ ...patient('p'), fullUrl: `${base}/Patient/q` }]),
    'error contradiction entry.0.fullUrl',
  ],
  [
    'Bundle.entry.fullUrl: one that is no URL of a server need not',
    bundle('collection', [{ ...patient('p'), fullUrl: 'https://clinic.example/Chart/q' }]),
  ],
  [
    'bdl-7: a fullUrl stands once',
    bundle('collection', [patient('p'), patient('p')]),
    'error broken-invariant ',
  ],
  ['http.html#update: sound', bundle('transaction', [{ ...patient('p'), ...put('Patient/p') }])],
  [
    'http.html#update: the request names the resource that it sends',
    bundle('transaction', [{ ...patient('p'), ...put('Patient/q') }]),
    'error contradiction entry.0.request.url',
  ],
  [
    'http.html#cond-update: a conditional one names its type',
    bundle('transaction', [{ ...patient('p'), ...put('Patient?identifier=a|1') }]),
  ],
  [
    'http.html#create: the request names the type that it sends',
    bundle('transaction', [{ ...patient('p'), ...post('Observation') }]),
    'error contradiction entry.0.request.url',
  ],
  [
    'http.html#transaction: no resource is changed twice',
    bundle('transaction', [
      { ...patient('p'), ...put('Patient/p') },
      {
        fullUrl: 'urn:uuid:4a1b5e0c-7f3e-4c77-9c38-3f0a3c1f4b11',
        request: { method: 'DELETE', url: 'Patient/p' },
      },
    ]),
    'error duplicate-key entry.1.request.url',
  ],
  [
    'documents.html#content: sound',
    bundle('document', [
      composition('Observation/o'),
      patient('p'),
      observation('o', { subject: { reference: 'Patient/p' } }),
    ]),
  ],
  [
    'documents.html#content: all that the composition names comes with it',
    bundle('document', [composition('Observation/o'), patient('p')]),
    'error unresolved-reference entry.0.resource.section.0.entry.1.reference',
  ],
  [
    'documents.html#content: nothing comes along that nothing leads to',
    bundle('document', [composition(), patient('p'), observation('o')]),
    'error unreachable-entry entry.2',
  ],
  [
    'documents.html#content: what leads to the content is no part of it',
    bundle('document', [
      composition(),
      patient('p'),
      observation('o', { subject: { reference: 'Patient/p' } }),
    ]),
    'warning unreachable-entry entry.2',
  ],
  [
    'documents.html#content: but Provenance may lead to it',
    bundle('document', [
      composition(),
      patient('p'),
      {
        fullUrl: `${base}/Provenance/v`,
        resource: {
          resourceType: 'Provenance',
          id: 'v',
          text,
          target: [{ reference: 'Patient/p' }],
          recorded: '2026-03-02T10:00:00Z',
          agent: [{ who: { reference: 'Patient/p' } }],
        },
      },
    ]),
  ],
  [
    'documents.html#content: a resource of a type that is not held leads on',
    bundle('document', [
      composition('Condition/a'),
      patient('p'),
      condition('a', { evidence: [{ detail: [{ reference: 'Observation/o' }] }] }),
      observation('o'),
    ]),
  ],
  [
    'documents.html#content: also where its link stands in an extension',
    bundle('document', [
      composition('Condition/a'),
      patient('p'),
      condition('a', {
        extension: [{ url: `${base}/seen`, valueReference: { reference: 'Observation/o' } }],
      }),
      observation('o'),
    ]),
    'information unchecked-extension entry.2.resource.extension.0',
  ],
  [
    'observation.html#obsgrouping: a group is no member of itself',
    bundle('collection', [
      observation('a', { hasMember: [{ reference: 'Observation/b' }] }),
      observation('b', { hasMember: [{ reference: 'Observation/a' }] }),
    ]),
    'warning circular-reference entry.1.resource.hasMember.0',
  ],
];

describe('bundles', () => {
  test.each(cases.map(([rule, value, ...issues]) => ({ rule, value, issues })))(
    '$rule',
    ({ value, issues }) => {
      expect(told(value)).toEqual(issues);
    },
  );
});

test('a way of 10,000 entries from the composition is followed without recursion', () => {
  const chain = Array.from({ length: 10_000 }, (_, at) =>
    condition(`n${at}`, { evidence: [{ detail: [{ reference: `Condition/n${at + 1}` }] }] }),
  );
  const entries = [composition('Condition/n0'), patient('p'), ...chain, condition('n10000')];
  const { issues } = validateBundle(bundle('document', entries));
  const mild = new Set(['unchecked-resource', 'issues-cut']);
  expect(issues.filter(({ code }) => !mild.has(code))).toEqual([]);
});
