import { atDomain, contained, extension } from '../fault-kinds.ts';
import type { NamedFault } from '../places.ts';
/** Contained resources. */
export const containedFaults: readonly NamedFault[] = [
  ['contained-without-id', contained({ resourceType: 'Basic', code: { text: 'x' } })],
  ['contained-and-not-used', contained({ resourceType: 'Basic', id: 'c1', code: { text: 'x' } })],
  ['contained-of-unknown-type', contained({ resourceType: 'Banana', id: 'c1' })],
  ['contained-without-type', contained({ id: 'c1', code: { text: 'x' } })],
  [
    'contained-in-contained',
    contained({
      resourceType: 'Basic',
      id: 'c1',
      code: { text: 'x' },
      contained: [{ resourceType: 'Basic', id: 'c2', code: { text: 'x' } }],
    }),
  ],
  [
    'contained-with-version',
    contained({ resourceType: 'Basic', id: 'c1', code: { text: 'x' }, meta: { versionId: '1' } }),
  ],
  [
    'contained-with-security',
    contained({
      resourceType: 'Basic',
      id: 'c1',
      code: { text: 'x' },
      meta: { security: [{ code: 'R' }] },
    }),
  ],
  ['contained-with-fault', contained({ resourceType: 'Basic', id: 'c1' })],
  [
    'contained-as-object',
    atDomain(
      (resource) =>
        (resource['contained'] = { resourceType: 'Basic', id: 'c1', code: { text: 'x' } }),
    ),
  ],
];

/** Extensions by URL, value and place. */
export const extensionFaults: readonly NamedFault[] = [
  ['extension-of-nothing', extension({ url: 'https://vineyard.example/e' })],
  [
    'extension-with-two-values',
    extension({ url: 'https://vineyard.example/e', valueString: 'a', valueCode: 'b' }),
  ],
  ['extension-of-relative-url', extension({ url: 'e', valueString: 'a' })],
  ['extension-of-empty-url', extension({ url: '', valueString: 'a' })],
  [
    'extension-of-unknown-choice',
    extension({ url: 'https://vineyard.example/e', valueBanana: 'a' }),
  ],
  [
    'extension-with-value-and-parts',
    extension({
      url: 'https://vineyard.example/e',
      valueString: 'a',
      extension: [{ url: 'p', valueString: 'b' }],
    }),
  ],
  [
    'extension-with-part-of-nothing',
    extension({ url: 'https://vineyard.example/e', extension: [{ url: 'p' }] }),
  ],
  [
    'extension-with-unknown-property',
    extension({ url: 'https://vineyard.example/e', valueString: 'a', name: 'b' }),
  ],
  [
    'extension-of-wrong-value-in-core',
    extension({
      url: 'http://hl7.org/fhir/StructureDefinition/data-absent-reason',
      valueString: 'unknown',
    }),
  ],
  [
    'extension-of-wrong-code-in-core',
    extension({
      url: 'http://hl7.org/fhir/StructureDefinition/data-absent-reason',
      valueCode: 'forgotten',
    }),
  ],
  [
    'extension-of-core-that-is-none',
    extension({ url: 'http://hl7.org/fhir/StructureDefinition/banana', valueString: 'x' }),
  ],
  [
    'extension-in-a-wrong-place',
    extension({
      url: 'http://hl7.org/fhir/StructureDefinition/humanname-own-prefix',
      valueString: 'x',
    }),
  ],
  [
    'extension-as-object',
    atDomain(
      (resource) =>
        (resource['extension'] = { url: 'https://vineyard.example/e', valueString: 'x' }),
    ),
  ],
];
