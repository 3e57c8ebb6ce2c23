import { atType } from '../fault-kinds.ts';
import type { Json, NamedFault } from '../places.ts';
import { core } from './core.ts';
/** References, and data types that few resources have. */
export const oddReferencesAndOthers: readonly NamedFault[] = [
  ['reference-to-the-resource-itself', atType('Reference', { reference: '#' })],
  [
    'reference-by-uuid',
    atType('Reference', { reference: 'urn:uuid:c757873d-ec9a-4326-a141-556f43239520' }),
  ],
  ['reference-by-oid', atType('Reference', { reference: 'urn:oid:1.2.3' })],
  ['reference-by-bare-id', atType('Reference', { reference: 'p1' })],
  ['reference-by-query', atType('Reference', { reference: 'Patient?identifier=1' })],
  ['reference-with-slash-before', atType('Reference', { reference: '/Patient/1' })],
  ['reference-with-version-of-nothing', atType('Reference', { reference: 'Patient/1/_history/' })],
  ['reference-with-fragment', atType('Reference', { reference: 'Patient/1#c' })],
  ['reference-with-id-of-other-characters', atType('Reference', { reference: 'Patient/a_b' })],
  ['reference-to-three-steps', atType('Reference', { reference: 'Patient/1/2' })],
  [
    'reference-with-type-that-differs',
    atType('Reference', { reference: 'Patient/1', type: 'Practitioner' }),
  ],
  [
    'reference-with-type-as-url',
    atType('Reference', { type: 'http://hl7.org/fhir/StructureDefinition/Patient', display: 'x' }),
  ],
  ['reference-of-display-alone', atType('Reference', { display: 'the nurse' })],
  [
    'reference-of-extension-alone',
    atType('Reference', { extension: [{ url: core('data-absent-reason'), valueCode: 'unknown' }] }),
  ],
  ['reference-as-text', atType('Reference', 'Patient/1' as unknown as Json)],
  [
    'annotation-author-of-wrong-type',
    atType('Annotation', { authorReference: { reference: 'Observation/1' }, text: 'x' }),
  ],
  ['expression-without-content', atType('Expression', { language: 'text/fhirpath' })],
  ['expression-of-unknown-language', atType('Expression', { language: 'banana', expression: '1' })],
  [
    'signature-without-who',
    atType('Signature', {
      type: [{ system: 'urn:iso-astm:E1762-95:2013', code: '1.2.840.10065.1.12.1.1' }],
      when: '2021-05-02T10:00:00Z',
    }),
  ],
  ['contact-detail-of-unknown-property', atType('ContactDetail', { phone: '1' })],
  [
    'usage-context-of-two-values',
    atType('UsageContext', {
      code: { code: 'age' },
      valueQuantity: { value: 1 },
      valueRange: { low: { value: 1 } },
    }),
  ],
  ['usage-context-without-value', atType('UsageContext', { code: { code: 'age' } })],
  ['related-artifact-of-unknown-type', atType('RelatedArtifact', { type: 'banana' })],
  [
    'dosage-of-as-needed-twice',
    atType('Dosage', { asNeededBoolean: true, asNeededCodeableConcept: { text: 'x' } }),
  ],
  ['dosage-of-negative-sequence', atType('Dosage', { sequence: -1.5 })],
  ['data-requirement-of-unknown-type', atType('DataRequirement', { type: 'Banana' })],
  ['trigger-without-content', atType('TriggerDefinition', { type: 'named-event' })],
  [
    'sampled-data-in-words',
    atType('SampledData', { origin: { value: 0 }, period: 1, dimensions: 1, data: 'abc' }),
  ],
  ['element-definition-without-path', atType('ElementDefinition', { id: 'x', min: 0 })],
];
