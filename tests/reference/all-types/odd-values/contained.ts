import { atDomain, contained } from '../fault-kinds.ts';
import type { NamedFault } from '../places.ts';
/** Contained resources, and what refers to them. */
export const oddContained: readonly NamedFault[] = [
  [
    'contained-with-narrative',
    contained({
      resourceType: 'Basic',
      id: 'c1',
      code: { text: 'x' },
      text: { status: 'generated', div: '<div xmlns="http://www.w3.org/1999/xhtml">x</div>' },
    }),
  ],
  [
    'contained-with-last-updated',
    contained({
      resourceType: 'Basic',
      id: 'c1',
      code: { text: 'x' },
      meta: { lastUpdated: '2021-05-02T10:00:00Z' },
    }),
  ],
  [
    'contained-with-hash-in-id',
    contained({ resourceType: 'Basic', id: '#c1', code: { text: 'x' } }),
  ],
  ['contained-of-empty-object', contained({})],
  ['contained-bundle', contained({ resourceType: 'Bundle', id: 'c1', type: 'collection' })],
  ['contained-binary', contained({ resourceType: 'Binary', id: 'c1', contentType: 'text/plain' })],
  [
    'contained-that-refers-to-its-holder',
    contained({
      resourceType: 'Basic',
      id: 'c1',
      code: { text: 'x' },
      subject: { reference: '#' },
    }),
  ],
  [
    'contained-that-refers-to-itself',
    contained({
      resourceType: 'Basic',
      id: 'c1',
      code: { text: 'x' },
      subject: { reference: '#c1' },
    }),
  ],
  [
    'contained-of-unknown-code',
    contained({ resourceType: 'Observation', id: 'c1', status: 'banana', code: { text: 'x' } }),
  ],
  [
    'contained-named-by-extension',
    atDomain((it) => {
      it['contained'] = [{ resourceType: 'Basic', id: 'c1', code: { text: 'x' } }];
      it['extension'] = [
        { url: 'http://vineyard.example/e', valueReference: { reference: '#c1' } },
      ];
    }),
  ],
  [
    'contained-named-by-canonical',
    atDomain((it) => {
      it['contained'] = [{ resourceType: 'Basic', id: 'c1', code: { text: 'x' } }];
      it['extension'] = [{ url: 'http://vineyard.example/e', valueCanonical: '#c1' }];
    }),
  ],
  [
    'contained-named-by-uri',
    atDomain((it) => {
      it['contained'] = [{ resourceType: 'Basic', id: 'c1', code: { text: 'x' } }];
      it['extension'] = [{ url: 'http://vineyard.example/e', valueUri: '#c1' }];
    }),
  ],
  [
    'contained-twice-with-one-id',
    atDomain((it) => {
      it['contained'] = [
        { resourceType: 'Basic', id: 'c1', code: { text: 'x' } },
        { resourceType: 'Basic', id: 'c1', code: { text: 'y' } },
      ];
      it['extension'] = [
        { url: 'http://vineyard.example/e', valueReference: { reference: '#c1' } },
      ];
    }),
  ],
];
