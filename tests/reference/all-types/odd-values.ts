import {
  atDomain,
  atNarrative,
  atPrimitive,
  atRoot,
  atType,
  contained,
  extension,
} from './fault-kinds.ts';
import { atProperty, type Fault, type Json } from './places.ts';

const UCUM = 'http://unitsofmeasure.org';
const core = (name: string): string => `http://hl7.org/fhir/StructureDefinition/${name}`;

/** Odd forms of values and of what every resource has, sound ones among them. */
export const oddValues: readonly (readonly [name: string, fault: Fault])[] = [
  // Primitives.
  ['instant-of-leap-second', atPrimitive('instant', '2016-12-31T23:59:60Z')],
  ['instant-of-zone-plus-14', atPrimitive('instant', '2021-05-02T10:00:00+14:00')],
  ['instant-of-zone-plus-15', atPrimitive('instant', '2021-05-02T10:00:00+15:00')],
  ['instant-of-zone-minus-zero', atPrimitive('instant', '2021-05-02T10:00:00-00:00')],
  ['instant-without-zone', atPrimitive('instant', '2021-05-02T10:00:00')],
  ['instant-of-february-29', atPrimitive('instant', '2021-02-29T10:00:00Z')],
  ['dateTime-of-february-29', atPrimitive('dateTime', '2024-02-29')],
  ['dateTime-of-april-31', atPrimitive('dateTime', '2021-04-31')],
  ['dateTime-of-small-z', atPrimitive('dateTime', '2021-05-02T10:00:00z')],
  ['dateTime-with-comma', atPrimitive('dateTime', '2021-05-02T10:00:00,5Z')],
  ['dateTime-with-space-after', atPrimitive('dateTime', '2021-05-02 ')],
  ['dateTime-of-far-future', atPrimitive('dateTime', '9999-12-31')],
  ['dateTime-of-1800', atPrimitive('dateTime', '1800-01-01')],
  ['dateTime-of-five-digits', atPrimitive('dateTime', '12021-05-02')],
  ['date-of-week', atPrimitive('date', '2021-W05')],
  ['date-of-day-number', atPrimitive('date', '2021-122')],
  ['date-of-month', atPrimitive('date', '2021-05')],
  ['date-of-month-0', atPrimitive('date', '2021-00')],
  ['time-of-minutes', atPrimitive('time', '10:00')],
  ['time-of-24', atPrimitive('time', '24:00:00')],
  ['time-with-fraction', atPrimitive('time', '10:00:00.123')],
  ['decimal-with-exponent', atPrimitive('decimal', 1e21)],
  ['decimal-negative', atPrimitive('decimal', -0.5)],
  ['integer-negative', atPrimitive('integer', -5)],
  ['integer-of-text', atPrimitive('integer', '5')],
  ['unsigned-too-large', atPrimitive('unsignedInt', 3_000_000_000)],
  ['positive-too-large', atPrimitive('positiveInt', 2_147_483_648)],
  ['code-with-space-inside', atPrimitive('code', 'a b')],
  ['code-with-two-spaces', atPrimitive('code', 'a  b')],
  ['code-with-line-break', atPrimitive('code', 'a\nb')],
  ['id-with-slash', atPrimitive('id', 'a/b')],
  ['id-of-capitals', atPrimitive('id', 'ABC.1-2')],
  ['oid-without-urn', atPrimitive('oid', '1.2.3')],
  ['uuid-in-capitals', atPrimitive('uuid', 'urn:uuid:C757873D-EC9A-4326-A141-556F43239520')],
  ['uri-of-oid', atPrimitive('uri', 'urn:oid:2.16.840.1.113883')],
  ['uri-of-oid-3', atPrimitive('uri', 'urn:oid:3.1')],
  ['uri-of-oid-with-dot', atPrimitive('uri', 'urn:oid:1.2.')],
  ['uri-of-uuid-in-capitals', atPrimitive('uri', 'urn:uuid:C757873D-EC9A-4326-A141-556F43239520')],
  ['uri-of-two-spaces', atPrimitive('uri', ' http://vineyard.example/a ')],
  ['uri-relative', atPrimitive('uri', 'vineyard/a')],
  ['uri-of-fragment', atPrimitive('uri', '#a')],
  ['uri-of-scheme-alone', atPrimitive('uri', 'http://')],
  ['uri-with-umlaut', atPrimitive('uri', 'http://vineyard.example/ä')],
  ['url-relative', atPrimitive('url', 'a/b')],
  ['url-of-mail', atPrimitive('url', 'mailto:nurse@vineyard.example')],
  ['canonical-with-version', atPrimitive('canonical', 'http://vineyard.example/a|1.0')],
  ['canonical-with-empty-version', atPrimitive('canonical', 'http://vineyard.example/a|')],
  ['canonical-with-two-bars', atPrimitive('canonical', 'http://vineyard.example/a|1|2')],
  ['canonical-with-fragment', atPrimitive('canonical', 'http://vineyard.example/a#b')],
  ['canonical-of-fragment-of-nothing', atPrimitive('canonical', '#nothing')],
  ['canonical-in-words', atPrimitive('canonical', 'our questionnaire')],
  ['string-with-nul', atPrimitive('string', 'a\u0000b')],
  ['string-with-bell', atPrimitive('string', 'a\u0007b')],
  ['string-with-lone-surrogate', atPrimitive('string', 'a\ud800b')],
  ['string-of-line-break', atPrimitive('string', '\n')],
  ['string-of-no-break-space', atPrimitive('string', '\u00a0')],
  ['string-with-script', atPrimitive('string', '<script>alert(1)</script>')],
  ['string-with-bidi', atPrimitive('string', 'a\u202eb')],
  ['markdown-with-html', atPrimitive('markdown', 'a <b>bold</b> word')],
  ['markdown-with-less-than', atPrimitive('markdown', 'a < b and c<d')],
  ['base64-with-line-breaks', atPrimitive('base64Binary', 'QUJD\r\nQUJD')],
  ['base64-with-spaces', atPrimitive('base64Binary', 'QU JD')],
  ['base64-with-inner-padding', atPrimitive('base64Binary', 'QQ==QUJD')],
  ['boolean-of-text', atPrimitive('boolean', 'false')],
  // Data types.
  ['quantity-of-value-alone', atType('Quantity', { value: 1 })],
  ['quantity-of-system-alone', atType('Quantity', { value: 1, system: UCUM })],
  ['quantity-of-unit-alone', atType('Quantity', { unit: 'mg' })],
  ['quantity-of-text', atType('Quantity', { value: '1' })],
  [
    'quantity-of-ucum-with-annotation',
    atType('Quantity', { value: 1, system: UCUM, code: '{score}' }),
  ],
  ['quantity-of-ucum-by-name', atType('Quantity', { value: 1, system: UCUM, code: 'day' })],
  ['quantity-of-ad', atType('Quantity', { value: 1, comparator: 'ad', unit: 'mg' })],
  ['age-without-unit', atType('Age', { value: 4 })],
  ['age-in-metres', atType('Age', { value: 4, system: UCUM, code: 'm' })],
  ['age-negative', atType('Age', { value: -4, system: UCUM, code: 'a' })],
  [
    'age-of-other-system',
    atType('Age', { value: 4, system: 'http://vineyard.example/u', code: 'a' }),
  ],
  ['duration-without-unit', atType('Duration', { value: 4 })],
  ['duration-in-kilograms', atType('Duration', { value: 4, system: UCUM, code: 'kg' })],
  ['duration-with-system-alone', atType('Duration', { value: 4, system: UCUM })],
  ['distance-in-seconds', atType('Distance', { value: 4, system: UCUM, code: 's' })],
  ['count-in-metres', atType('Count', { value: 4, system: UCUM, code: 'm' })],
  ['count-of-half', atType('Count', { value: 4.5, system: UCUM, code: '1' })],
  ['simple-quantity-with-comparator', atType('SimpleQuantity', { value: 1, comparator: '<' })],
  ['range-with-comparator', atType('Range', { low: { value: 1, comparator: '<' } })],
  [
    'range-of-units',
    atType('Range', { low: { value: 1, unit: 'm' }, high: { value: 2, unit: 's' } }),
  ],
  ['range-of-nothing', atType('Range', { id: 'r' })],
  [
    'ratio-of-denominator-zero',
    atType('Ratio', { numerator: { value: 1 }, denominator: { value: 0 } }),
  ],
  [
    'ratio-of-extension',
    atType('Ratio', { extension: [{ url: core('data-absent-reason'), valueCode: 'unknown' }] }),
  ],
  ['period-with-open-start', atType('Period', { end: '2021-05' })],
  ['period-mixed', atType('Period', { start: '2021-05-02T10:00:00Z', end: '2021' })],
  [
    'period-reversed-in-zones',
    atType('Period', { start: '2021-05-02T10:00:00Z', end: '2021-05-02T10:00:00+02:00' }),
  ],
  [
    'timing-with-when-and-time',
    atType('Timing', {
      repeat: { when: ['MORN'], timeOfDay: ['10:00:00'], frequency: 1, period: 1, periodUnit: 'd' },
    }),
  ],
  [
    'timing-with-offset-and-meal',
    atType('Timing', {
      repeat: { when: ['C'], offset: 5, frequency: 1, period: 1, periodUnit: 'd' },
    }),
  ],
  ['timing-of-unknown-weekday', atType('Timing', { repeat: { dayOfWeek: ['monday'] } })],
  [
    'timing-of-two-bounds',
    atType('Timing', {
      repeat: { boundsPeriod: { start: '2021' }, boundsRange: { low: { value: 1 } } },
    }),
  ],
  ['timing-of-negative-period', atType('Timing', { repeat: { period: -1, periodUnit: 'd' } })],
  ['timing-of-duration-max-alone', atType('Timing', { repeat: { durationMax: 5 } })],
  ['timing-of-count-max-alone', atType('Timing', { repeat: { countMax: 5 } })],
  ['timing-of-period-max-alone', atType('Timing', { repeat: { periodMax: 5 } })],
  [
    'timing-of-code',
    atType('Timing', {
      code: {
        coding: [
          { system: 'http://terminology.hl7.org/CodeSystem/v3-GTSAbbreviation', code: 'BANANA' },
        ],
      },
    }),
  ],
  [
    'attachment-of-odd-type',
    atType('Attachment', { contentType: 'banana', url: 'http://vineyard.example/a' }),
  ],
  [
    'attachment-with-type-parameters',
    atType('Attachment', {
      contentType: 'text/plain; charset=UTF-8',
      url: 'http://vineyard.example/a',
    }),
  ],
  [
    'attachment-of-language-words',
    atType('Attachment', {
      contentType: 'text/plain',
      language: 'Deutsch',
      url: 'http://vineyard.example/a',
    }),
  ],
  [
    'attachment-with-wrong-hash',
    atType('Attachment', { contentType: 'text/plain', data: 'QUJD', hash: 'QUJD' }),
  ],
  [
    'attachment-with-wrong-size',
    atType('Attachment', { contentType: 'text/plain', data: 'QUJD', size: 77 }),
  ],
  [
    'attachment-to-missing-contained',
    atType('Attachment', { contentType: 'text/plain', url: '#x' }),
  ],
  ['money-without-value', atType('Money', { currency: 'EUR' })],
  ['money-in-small-letters', atType('Money', { value: 1, currency: 'eur' })],
  ['contact-of-unknown-system', atType('ContactPoint', { system: 'whatsapp', value: '1' })],
  [
    'contact-of-extension',
    atType('ContactPoint', {
      extension: [{ url: core('data-absent-reason'), valueCode: 'unknown' }],
    }),
  ],
  [
    'identifier-with-assigner-of-wrong-type',
    atType('Identifier', { value: '1', assigner: { reference: 'Patient/1' } }),
  ],
  [
    'identifier-of-uri-in-words',
    atType('Identifier', { system: 'urn:ietf:rfc:3986', value: 'not a uri' }),
  ],
  [
    'identifier-of-ssn-in-words',
    atType('Identifier', { system: 'http://hl7.org/fhir/sid/us-ssn', value: 'abc' }),
  ],
  [
    'identifier-of-system-alone',
    atType('Identifier', { system: 'http://vineyard.example/numbers' }),
  ],
  [
    'identifier-of-unknown-type',
    atType('Identifier', {
      value: '1',
      type: {
        coding: [{ system: 'http://terminology.hl7.org/CodeSystem/v2-0203', code: 'BANANA' }],
      },
    }),
  ],
  ['name-of-unknown-use', atType('HumanName', { use: 'pet', family: 'x' })],
  [
    'name-with-null-given',
    atType('HumanName', {
      given: [null],
      _given: [{ extension: [{ url: core('data-absent-reason'), valueCode: 'unknown' }] }],
    }),
  ],
  [
    'name-with-given-of-nothing',
    atType('HumanName', { family: 'x', given: [null], _given: [null] }),
  ],
  ['name-with-extras-longer', atType('HumanName', { given: ['a'], _given: [null, { id: 'x' }] })],
  ['name-with-extras-shorter', atType('HumanName', { given: ['a', 'b'], _given: [{ id: 'x' }] })],
  ['name-with-extras-as-object', atType('HumanName', { given: ['a'], _given: { id: 'x' } })],
  [
    'name-with-null-and-value',
    atType('HumanName', { given: ['a', null], _given: [null, { id: 'x' }] }),
  ],
  ['address-of-lines-as-text', atType('Address', { line: 'a' })],
  [
    'address-with-period-reversed',
    atType('Address', { city: 'x', period: { start: '2021', end: '2020' } }),
  ],
  [
    'coding-of-unknown-version',
    atType('Coding', {
      system: 'http://terminology.hl7.org/CodeSystem/v3-ActCode',
      version: '0',
      code: 'AMB',
    }),
  ],
  ['coding-of-fragment-system', atType('Coding', { system: '#cs', code: 'a' })],
  ['coding-of-display-alone', atType('Coding', { display: 'a' })],
  [
    'coding-of-oid-system',
    atType('Coding', { system: 'urn:oid:2.16.840.1.113883.6.96', code: '22298006' }),
  ],
  [
    'coding-of-unknown-hl7-system',
    atType('Coding', { system: 'http://terminology.hl7.org/CodeSystem/banana', code: 'a' }),
  ],
  [
    'coding-of-unknown-fhir-system',
    atType('Coding', { system: 'http://hl7.org/fhir/banana', code: 'a' }),
  ],
  [
    'coding-of-value-set-url',
    atType('Coding', { system: 'http://hl7.org/fhir/ValueSet/observation-status', code: 'final' }),
  ],
  [
    'concept-of-two-codings-of-one-system',
    atType('CodeableConcept', {
      coding: [
        { system: 'http://terminology.hl7.org/CodeSystem/v3-ActCode', code: 'AMB' },
        { system: 'http://terminology.hl7.org/CodeSystem/v3-ActCode', code: 'BANANA' },
      ],
    }),
  ],
  [
    'concept-of-extension-alone',
    atType('CodeableConcept', {
      extension: [{ url: core('data-absent-reason'), valueCode: 'unknown' }],
    }),
  ],
  [
    'concept-of-loinc-in-words',
    atType('CodeableConcept', { coding: [{ system: 'http://loinc.org', code: 'weight' }] }),
  ],
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
  // What every resource has.
  ['id-of-point', atRoot((it) => (it['id'] = '.'))],
  ['language-of-region', atRoot((it) => (it['language'] = 'de-CH'))],
  ['language-of-lower-region', atRoot((it) => (it['language'] = 'de-ch'))],
  ['language-of-private-use', atRoot((it) => (it['language'] = 'x-vineyard'))],
  ['language-of-underscore', atRoot((it) => (it['language'] = 'de_CH'))],
  ['meta-profile-relative', atRoot((it) => (it['meta'] = { profile: ['vineyard'] }))],
  [
    'meta-profile-twice',
    atRoot(
      (it) =>
        (it['meta'] = {
          profile: [core(String(it['resourceType'])), core(String(it['resourceType']))],
        }),
    ),
  ],
  [
    'meta-profile-of-core',
    atRoot((it) => (it['meta'] = { profile: [core(String(it['resourceType']))] })),
  ],
  [
    'meta-profile-of-core-with-version',
    atRoot((it) => (it['meta'] = { profile: [`${core(String(it['resourceType']))}|9.9.9`] })),
  ],
  [
    'meta-profile-unknown',
    atRoot((it) => (it['meta'] = { profile: ['http://vineyard.example/profile'] })),
  ],
  ['meta-version-with-space', atRoot((it) => (it['meta'] = { versionId: 'a b' }))],
  ['meta-source-in-words', atRoot((it) => (it['meta'] = { source: 'our system' }))],
  [
    'meta-security-of-unknown-code',
    atRoot(
      (it) =>
        (it['meta'] = {
          security: [
            { system: 'http://terminology.hl7.org/CodeSystem/v3-Confidentiality', code: 'BANANA' },
          ],
        }),
    ),
  ],
  ['meta-tag-of-display', atRoot((it) => (it['meta'] = { tag: [{ display: 'x' }] }))],
  ['rules-absolute', atRoot((it) => (it['implicitRules'] = 'http://vineyard.example/rules'))],
  ['resource-type-twice-written', atRoot((it) => (it['ResourceType'] = 'Patient'))],
  ['schema-of-json', atRoot((it) => (it['$schema'] = 'http://json-schema.org/draft-06/schema#'))],
  [
    'extension-of-root-of-bare',
    atRoot((it) => (it['extension'] = [{ url: 'http://vineyard.example/e', valueString: 'x' }])),
  ],
  [
    'extra-of-id',
    atRoot(
      (it) => (it['_id'] = { extension: [{ url: 'http://vineyard.example/e', valueString: 'x' }] }),
    ),
  ],
  [
    'extra-of-language',
    atRoot(
      (it) =>
        (it['_language'] = {
          extension: [{ url: core('data-absent-reason'), valueCode: 'unknown' }],
        }),
    ),
  ],
  // Narrative.
  ...Object.entries(narratives()).map(
    ([name, inner]) => [`narrative-${name}`, atNarrative({ div: inner })] as const,
  ),
  [
    'narrative-of-extension',
    atNarrative({
      div: undefined,
      _div: { extension: [{ url: core('data-absent-reason'), valueCode: 'unknown' }] },
    }),
  ],
  [
    'narrative-as-text',
    atDomain((it) => (it['text'] = '<div xmlns="http://www.w3.org/1999/xhtml">x</div>')),
  ],
  ['narrative-of-status-empty', atNarrative({ status: 'empty' })],
  // Contained.
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
  // Extensions of HL7, by value, place and parts.
  [
    'extension-translation-at-root',
    extension({
      url: core('translation'),
      extension: [
        { url: 'lang', valueCode: 'de' },
        { url: 'content', valueString: 'x' },
      ],
    }),
  ],
  [
    'extension-translation-without-content',
    onText({ url: core('translation'), extension: [{ url: 'lang', valueCode: 'de' }] }),
  ],
  [
    'extension-translation-sound',
    onText({
      url: core('translation'),
      extension: [
        { url: 'lang', valueCode: 'de' },
        { url: 'content', valueString: 'x' },
      ],
    }),
  ],
  [
    'extension-translation-of-unknown-part',
    onText({
      url: core('translation'),
      extension: [
        { url: 'lang', valueCode: 'de' },
        { url: 'content', valueString: 'x' },
        { url: 'banana', valueString: 'x' },
      ],
    }),
  ],
  [
    'extension-translation-of-language-words',
    onText({
      url: core('translation'),
      extension: [
        { url: 'lang', valueCode: 'German words' },
        { url: 'content', valueString: 'x' },
      ],
    }),
  ],
  ['extension-original-text-sound', onText({ url: core('originalText'), valueString: 'x' })],
  ['extension-rendering-of-number', onText({ url: core('rendering-style'), valueInteger: 1 })],
  [
    'extension-birth-place-elsewhere',
    extension({ url: core('patient-birthPlace'), valueAddress: { city: 'x' } }),
  ],
  [
    'extension-absent-reason-twice',
    onText(
      { url: core('data-absent-reason'), valueCode: 'unknown' },
      { url: core('data-absent-reason'), valueCode: 'masked' },
    ),
  ],
  ['extension-ordinal-at-root', extension({ url: core('ordinalValue'), valueDecimal: 1 })],
  ['extension-without-value-of-hl7', extension({ url: core('data-absent-reason') })],
  [
    'extension-with-version-in-url',
    extension({ url: 'http://vineyard.example/e|1.0', valueString: 'x' }),
  ],
  [
    'extension-of-urn',
    extension({ url: 'urn:uuid:c757873d-ec9a-4326-a141-556f43239520', valueString: 'x' }),
  ],
  [
    'extension-of-malformed-value',
    extension({ url: 'http://vineyard.example/e', valueDate: '2021-13-01' }),
  ],
  [
    'extension-of-unknown-unit',
    extension({
      url: 'http://vineyard.example/e',
      valueQuantity: { value: 1, system: UCUM, code: 'banana' },
    }),
  ],
  [
    'extension-of-value-as-list',
    extension({ url: 'http://vineyard.example/e', valueString: ['x'] }),
  ],
  ['extension-of-null-value', extension({ url: 'http://vineyard.example/e', valueString: null })],
  [
    'extension-of-value-extension',
    extension({ url: 'http://vineyard.example/e', valueExtension: { url: 'x' } }),
  ],
  [
    'extension-with-primitive-extra',
    extension({
      url: 'http://vineyard.example/e',
      _valueString: { extension: [{ url: core('data-absent-reason'), valueCode: 'unknown' }] },
    }),
  ],
  [
    'extension-as-modifier',
    atDomain(
      (it) =>
        (it['modifierExtension'] = [{ url: core('data-absent-reason'), valueCode: 'unknown' }]),
    ),
  ],
  ['modifier-as-extension', extension({ url: core('request-doNotPerform'), valueBoolean: true })],
  [
    'modifier-in-a-data-type',
    atType('CodeableConcept', {
      text: 'x',
      modifierExtension: [{ url: 'http://vineyard.example/e', valueBoolean: true }],
    }),
  ],
];

function onText(...extensions: Json[]): Fault {
  return atProperty(
    ({ type, list }) => type === 'string' && !list,
    (holder, name) => (holder[`_${name}`] = { extension: extensions }),
  );
}

function narratives(): Record<string, string> {
  const div = (inner: string, attributes = ''): string =>
    `<div xmlns="http://www.w3.org/1999/xhtml"${attributes}>${inner}</div>`;
  return {
    'with-image': div('<img src="#x" alt="a"/>'),
    'with-image-of-data': div('<img src="data:image/png;base64,QUJD" alt="a"/>'),
    'with-image-without-text': div('<img src="http://vineyard.example/a.png"/>'),
    'with-image-alone': div('<img alt="a"/>'),
    'with-script-link': div('<a href="javascript:alert(1)">x</a>'),
    'with-empty-link': div('<a href="">x</a>'),
    'with-link-target': div('<a href="http://vineyard.example" target="_blank">x</a>'),
    'with-iframe': div('<iframe src="http://vineyard.example"/>'),
    'with-object': div('<object data="x"/>'),
    'with-link-element': div('<link rel="stylesheet" href="x"/>x'),
    'with-base': div('<base href="x"/>x'),
    'with-font': div('<font color="red">x</font>'),
    'with-svg': div('<svg xmlns="http://www.w3.org/2000/svg"/>x'),
    'with-nested-paragraph': div('<p><p>x</p></p>'),
    'with-list-in-paragraph': div('<p><ul><li>x</li></ul></p>'),
    'with-table-in-paragraph': div('<p><table><tr><td>x</td></tr></table></p>'),
    'with-div-in-span': div('<span><div>x</div></span>'),
    'with-item-outside-list': div('<li>x</li>'),
    'with-cell-outside-row': div('<table><td>x</td></table>'),
    'with-row-outside-table': div('<tr><td>x</td></tr>'),
    'with-text-in-list': div('<ul>x<li>y</li></ul>'),
    'with-heading-7': div('<h7>x</h7>'),
    'with-section': div('<section>x</section>'),
    'with-table-whole': div(
      '<table class="grid"><caption>c</caption><thead><tr><th scope="col">a</th></tr></thead><tbody><tr><td colspan="2">b</td></tr></tbody></table>',
    ),
    'with-colgroup': div('<table><colgroup><col/></colgroup><tr><td>x</td></tr></table>'),
    'with-br-of-content': div('a<br>b</br>'),
    'with-comment': div('<!-- a -->x'),
    'with-cdata': div('<![CDATA[x]]>'),
    'with-number-entity': div('&#160;&#xA0;x'),
    'with-nbsp': div('&nbsp;x'),
    'with-bare-ampersand': div('a & b'),
    'with-less-than': div('a < b'),
    'with-style-attribute': div('<p style="color: red">x</p>'),
    'with-style-url': div('<p style="background: url(http://vineyard.example/a)">x</p>'),
    'with-class-and-id': div('<p class="a" id="b">x</p>'),
    'with-id-twice': div('<p id="b">x</p><p id="b">y</p>'),
    'with-data-attribute': div('<p data-x="1">x</p>'),
    'with-aria': div('<p aria-label="x" role="note">x</p>'),
    'with-lang': div('x', ' lang="de" xml:lang="de"'),
    'with-xml-space': div('<pre xml:space="preserve">x</pre>'),
    'with-namespace-prefix': '<h:div xmlns:h="http://www.w3.org/1999/xhtml">x</h:div>',
    'of-image-alone': div('<img src="#a" alt=""/>'),
    'of-break-alone': div('<br/>'),
    'of-no-break-space-alone': div('&#160;'),
    'with-declaration': `<?xml version="1.0"?>${div('x')}`,
    'with-space-before': ` ${div('x')}`,
    'with-text-before': `x${div('x')}`,
    'with-doctype': `<!DOCTYPE html>${div('x')}`,
    'in-capitals': '<DIV xmlns="http://www.w3.org/1999/xhtml">x</DIV>',
    'with-paragraph-in-capitals': div('<P>x</P>'),
    'with-attribute-in-capitals': div('<p CLASS="x">x</p>'),
    'with-unquoted-attribute': div('<p class=x>x</p>'),
    'with-attribute-twice': div('<p class="x" class="y">x</p>'),
    'with-crossed-tags': div('<b><i>x</b></i>'),
    'with-details': div('<details><summary>a</summary>x</details>'),
    'with-map': div('<map name="m" id="m"><area shape="rect" coords="0,0,1,1" href="#"/></map>x'),
    'with-quote': div('<blockquote cite="http://vineyard.example">x</blockquote><q>y</q>'),
    'with-small-words': div(
      '<small>a</small><big>b</big><tt>c</tt><sub>d</sub><sup>e</sup><abbr>f</abbr><code>g</code>',
    ),
    'with-strike': div('<s>a</s><u>b</u><strike>c</strike><center>d</center>'),
    'with-ins-and-del': div('<ins>a</ins><del>b</del>'),
    'with-definitions': div('<dl><dt>a</dt><dd>b</dd></dl>'),
    'with-label': div('<label>a</label>'),
    'with-button': div('<button>a</button>'),
  };
}
