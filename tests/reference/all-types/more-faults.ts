import { isObject } from '../../../src/validate/walk/json.ts';
import {
  atDomain,
  atNarrative,
  atPrimitive,
  atRoot,
  atType,
  contained,
  extension,
} from './fault-kinds.ts';
import { atProperty, type Fault } from './places.ts';

/** Faults in kinds that the catalogue of bundles (src/testing/faults) and faults.ts do not have. */
export const moreFaults: readonly (readonly [name: string, fault: Fault])[] = [
  ['period-of-words', atType('Period', { start: 'yesterday' })],
  ['period-reversed', atType('Period', { start: '2021-05-02', end: '2021-05-01' })],
  ['period-with-unknown-property', atType('Period', { begin: '2021-05-02' })],
  ['range-reversed', atType('Range', { low: { value: 5 }, high: { value: 4 } })],
  ['ratio-without-numerator', atType('Ratio', { denominator: { value: 5 } })],
  ['quantity-code-without-system', atType('Quantity', { value: 1, code: 'mg' })],
  ['quantity-without-content', atType('Quantity', { id: 'q1' })],
  ['quantity-with-comparator-in-words', atType('Quantity', { value: 1, comparator: 'less' })],
  ['money-in-unknown-currency', atType('Money', { value: 1, currency: 'XXZ' })],
  ['money-as-quantity', atType('Money', { value: 1, unit: 'EUR' })],
  ['attachment-data-without-type', atType('Attachment', { data: 'QUJD' })],
  ['attachment-data-not-base64', atType('Attachment', { contentType: 'text/plain', data: 'Ä' })],
  ['attachment-of-negative-size', atType('Attachment', { contentType: 'text/plain', size: -1 })],
  ['contact-without-system', atType('ContactPoint', { value: '1' })],
  ['contact-of-rank-zero', atType('ContactPoint', { system: 'phone', value: '1', rank: 0 })],
  ['identifier-with-use-in-words', atType('Identifier', { use: 'mine', value: '1' })],
  ['identifier-of-relative-system', atType('Identifier', { system: 'numbers', value: '1' })],
  ['annotation-without-text', atType('Annotation', { time: '2021-05-02' })],
  [
    'annotation-of-two-authors',
    atType('Annotation', { authorString: 'x', authorReference: { display: 'y' }, text: 'z' }),
  ],
  ['reference-of-nothing', atType('Reference', {})],
  ['reference-in-words', atType('Reference', { reference: 'the harbour worker' })],
  ['reference-with-space', atType('Reference', { reference: 'Patient/a b' })],
  ['reference-in-small-letters', atType('Reference', { reference: 'patient/1' })],
  ['reference-to-unknown-type', atType('Reference', { reference: 'Banana/1' })],
  ['reference-with-empty-id', atType('Reference', { reference: 'Patient/' })],
  ['reference-with-number', atType('Reference', { reference: 1 })],
  ['reference-whose-type-is-unknown', atType('Reference', { type: 'Banana', display: 'x' })],
  ['reference-by-identifier-alone', atType('Reference', { identifier: { value: '1' } })],
  ['reference-as-uuid-malformed', atType('Reference', { reference: 'urn:uuid:12' })],
  ['coding-without-code', atType('Coding', { system: 'https://vineyard.example/codes' })],
  ['coding-with-text', atType('Coding', { code: 'a', text: 'b' })],
  ['coding-selected-in-words', atType('Coding', { code: 'a', userSelected: 'yes' })],
  [
    'concept-as-coding',
    atType('CodeableConcept', { system: 'https://vineyard.example/codes', code: 'a' }),
  ],
  ['concept-of-one-object', atType('CodeableConcept', { coding: { code: 'a' } })],
  ['concept-of-blank-text', atType('CodeableConcept', { text: ' ' })],
  ['concept-of-empty-coding', atType('CodeableConcept', { coding: [{}] })],
  ['concept-of-no-coding', atType('CodeableConcept', { coding: [] })],
  ['timing-of-count-zero', atType('Timing', { repeat: { count: 0 } })],
  ['timing-of-period-without-unit', atType('Timing', { repeat: { period: 1 } })],
  ['timing-with-offset-alone', atType('Timing', { repeat: { offset: 5 } })],
  ['address-with-type-in-words', atType('Address', { type: 'house', city: 'x' })],
  ['name-of-nothing', atType('HumanName', { id: 'n1' })],
  ['name-with-one-given', atType('HumanName', { given: 'Ada' })],
  ['date-with-time', atPrimitive('date', '2021-05-02T10:00:00Z')],
  ['date-with-slashes', atPrimitive('date', '02/05/2021')],
  ['date-of-two-digits', atPrimitive('date', '21-05-02')],
  ['dateTime-without-zone', atPrimitive('dateTime', '2021-05-02T10:00:00')],
  ['dateTime-of-hour-25', atPrimitive('dateTime', '2021-05-02T25:00:00Z')],
  ['dateTime-of-hour-24', atPrimitive('dateTime', '2021-05-02T24:00:00Z')],
  ['dateTime-without-seconds', atPrimitive('dateTime', '2021-05-02T10:00Z')],
  ['dateTime-with-space-for-t', atPrimitive('dateTime', '2021-05-02 10:00:00Z')],
  ['dateTime-of-zone-without-colon', atPrimitive('dateTime', '2021-05-02T10:00:00+0200')],
  ['dateTime-of-year-zero', atPrimitive('dateTime', '0000-01-01')],
  ['dateTime-of-month-13', atPrimitive('dateTime', '2021-13')],
  ['dateTime-as-number', atPrimitive('dateTime', 2021)],
  ['dateTime-with-many-digits', atPrimitive('dateTime', '2021-05-02T10:00:00.1234567890Z')],
  ['instant-of-a-day', atPrimitive('instant', '2021-05-02')],
  ['time-with-zone', atPrimitive('time', '10:00:00Z')],
  ['code-with-space-before', atPrimitive('code', ' final')],
  ['code-of-nothing', atPrimitive('code', '')],
  ['code-as-boolean', atPrimitive('code', true)],
  ['text-of-spaces', atPrimitive('string', '   ')],
  ['text-with-space-before', atPrimitive('string', ' x')],
  ['text-with-tab', atPrimitive('string', 'a\tb')],
  ['text-with-markup', atPrimitive('string', 'a <b>b</b>')],
  ['text-as-list', atPrimitive('string', ['a'])],
  ['text-as-object', atPrimitive('string', { value: 'a' })],
  ['markdown-of-nothing', atPrimitive('markdown', '')],
  ['markdown-as-object', atPrimitive('markdown', { text: 'a' })],
  ['uri-of-nothing', atPrimitive('uri', '')],
  ['uri-in-words', atPrimitive('uri', 'not a uri')],
  ['uri-of-malformed-oid', atPrimitive('uri', 'urn:oid:1.02.3')],
  ['uri-of-malformed-uuid', atPrimitive('uri', 'urn:uuid:ABC')],
  ['url-in-words', atPrimitive('url', 'not a url')],
  ['canonical-with-space', atPrimitive('canonical', 'https://vineyard.example/a |1')],
  ['canonical-relative', atPrimitive('canonical', 'Questionnaire/1')],
  ['positive-of-zero', atPrimitive('positiveInt', 0)],
  ['positive-in-words', atPrimitive('positiveInt', '1')],
  ['unsigned-below-zero', atPrimitive('unsignedInt', -1)],
  ['integer-too-large', atPrimitive('integer', 2_147_483_648)],
  ['decimal-in-words', atPrimitive('decimal', '1.5')],
  ['boolean-as-number', atPrimitive('boolean', 1)],
  ['boolean-in-capitals', atPrimitive('boolean', 'True')],
  ['base64-with-dash', atPrimitive('base64Binary', 'QUJ-')],
  ['base64-cut-off', atPrimitive('base64Binary', 'QUJ')],
  [
    'list-of-lists',
    atProperty(
      ({ list }) => list,
      (holder, name) => (holder[name] = [holder[name]]),
    ),
  ],
  [
    'list-of-null',
    atProperty(
      ({ list }) => list,
      (holder, name) => (holder[name] = [null]),
    ),
  ],
  [
    'list-with-null',
    atProperty(
      ({ list }) => list,
      (holder, name) => {
        const value = holder[name];
        holder[name] = Array.isArray(value) ? [...value, null] : value;
      },
    ),
  ],
  [
    'list-with-empty-object',
    atProperty(
      ({ list, primitive }) => list && !primitive,
      (holder, name) => {
        const value = holder[name];
        holder[name] = Array.isArray(value) ? [...value, {}] : value;
      },
    ),
  ],
  [
    'optional-element-missing',
    atProperty(
      ({ required, list, choice }) => !required && !list && choice === undefined,
      (holder, name) => {
        delete holder[name];
      },
    ),
  ],
  [
    'optional-list-missing',
    atProperty(
      ({ required, list }) => !required && list,
      (holder, name) => {
        delete holder[name];
      },
    ),
  ],
  [
    'required-choice-missing',
    atProperty(
      ({ choice }) => choice?.required === true,
      (holder, name) => {
        delete holder[name];
      },
    ),
  ],
  [
    'member-doubled',
    atProperty(
      ({ list }) => list,
      (holder, name) => {
        const value = holder[name];
        if (Array.isArray(value)) holder[name] = [...value, value[0]];
      },
    ),
  ],
  [
    'name-in-capitals',
    atProperty(
      ({ choice }) => choice === undefined,
      (holder, name) => {
        holder[name.charAt(0).toUpperCase() + name.slice(1)] = holder[name];
        delete holder[name];
      },
    ),
  ],
  [
    'choice-of-unknown-type',
    atProperty(
      ({ choice }) => choice !== undefined,
      (holder, name, { choice }) => {
        holder[`${choice?.name}Banana`] = holder[name];
        delete holder[name];
      },
    ),
  ],
  [
    'choice-without-type',
    atProperty(
      ({ choice }) => choice !== undefined,
      (holder, name, { choice }) => {
        holder[choice?.name ?? ''] = holder[name];
        delete holder[name];
      },
    ),
  ],
  [
    'extra-empty',
    atProperty(
      ({ primitive, list }) => primitive && !list,
      (holder, name) => (holder[`_${name}`] = {}),
    ),
  ],
  [
    'extra-as-text',
    atProperty(
      ({ primitive, list }) => primitive && !list,
      (holder, name) => (holder[`_${name}`] = 'x'),
    ),
  ],
  [
    'extra-with-value',
    atProperty(
      ({ primitive, list }) => primitive && !list,
      (holder, name) => (holder[`_${name}`] = { value: 'x' }),
    ),
  ],
  [
    'extra-of-an-object',
    atProperty(
      ({ primitive, list, type }) => !primitive && !list && type !== 'Resource',
      (holder, name) => (holder[`_${name}`] = { id: 'x' }),
    ),
  ],
  [
    'extra-with-extension-of-nothing',
    atProperty(
      ({ primitive, list }) => primitive && !list,
      (holder, name) =>
        (holder[`_${name}`] = { extension: [{ url: 'https://vineyard.example/e' }] }),
    ),
  ],
  [
    'extra-list-too-long',
    atProperty(
      ({ primitive, list }) => primitive && list,
      (holder, name) =>
        (holder[`_${name}`] = [null, null, null, null, null, null, null, { id: 'x' }]),
    ),
  ],
  ['comments-of-version-2', atRoot((resource) => (resource['fhir_comments'] = ['x']))],
  [
    'type-of-resource-in-data-type',
    atProperty(
      ({ primitive, list, type }) => !primitive && !list && type !== 'Resource',
      (holder, name) => {
        const value = holder[name];
        if (isObject(value)) holder[name] = { resourceType: 'Patient', ...value };
      },
    ),
  ],
  ['id-of-65-characters', atRoot((resource) => (resource['id'] = 'a'.repeat(65)))],
  ['id-of-nothing', atRoot((resource) => (resource['id'] = ''))],
  ['id-as-number', atRoot((resource) => (resource['id'] = 1))],
  ['id-with-space', atRoot((resource) => (resource['id'] = 'a b'))],
  ['language-in-words', atRoot((resource) => (resource['language'] = 'German words'))],
  ['language-as-concept', atRoot((resource) => (resource['language'] = { text: 'German' }))],
  ['rules-in-words', atRoot((resource) => (resource['implicitRules'] = 'our rules'))],
  ['meta-as-list', atRoot((resource) => (resource['meta'] = [{ versionId: '1' }]))],
  [
    'meta-updated-on-a-day',
    atRoot((resource) => (resource['meta'] = { lastUpdated: '2021-05-02' })),
  ],
  [
    'meta-of-unknown-property',
    atRoot((resource) => (resource['meta'] = { updated: '2021-05-02' })),
  ],
  ['meta-version-as-number', atRoot((resource) => (resource['meta'] = { versionId: 1 }))],
  [
    'meta-profile-as-text',
    atRoot((resource) => (resource['meta'] = { profile: 'https://vineyard.example/p' })),
  ],
  [
    'meta-profile-of-another-type',
    atRoot(
      (resource) =>
        (resource['meta'] = { profile: ['http://hl7.org/fhir/StructureDefinition/Linkage'] }),
    ),
  ],
  [
    'meta-tag-twice',
    atRoot(
      (resource) =>
        (resource['meta'] = {
          tag: [
            { system: 'https://vineyard.example/t', code: 'a' },
            { system: 'https://vineyard.example/t', code: 'a' },
          ],
        }),
    ),
  ],
  ['narrative-without-status', atNarrative({ status: undefined })],
  ['narrative-of-unknown-status', atNarrative({ status: 'written' })],
  ['narrative-without-div', atNarrative({ div: undefined })],
  ['narrative-in-plain-text', atNarrative({ div: 'Yearly check' })],
  ['narrative-without-namespace', atNarrative({ div: '<div>Yearly check</div>' })],
  [
    'narrative-of-spaces',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"> </div>' }),
  ],
  ['narrative-of-nothing', atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"/>' })],
  [
    'narrative-of-a-paragraph',
    atNarrative({ div: '<p xmlns="http://www.w3.org/1999/xhtml">x</p>' }),
  ],
  [
    'narrative-with-form',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"><form>x</form></div>' }),
  ],
  [
    'narrative-with-onclick',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"><p onclick="x">x</p></div>' }),
  ],
  [
    'narrative-with-unknown-attribute',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"><p colour="x">x</p></div>' }),
  ],
  [
    'narrative-with-unknown-element',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"><banana>x</banana></div>' }),
  ],
  [
    'narrative-not-closed',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"><p>x</div>' }),
  ],
  [
    'narrative-with-style-element',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"><style>p{}</style>x</div>' }),
  ],
  [
    'narrative-with-input',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"><input type="text"/>x</div>' }),
  ],
  [
    'narrative-with-link-in-the-page',
    atNarrative({
      div: '<div xmlns="http://www.w3.org/1999/xhtml"><a href="#nowhere">x</a></div>',
    }),
  ],
  [
    'narrative-with-link-of-spaces',
    atNarrative({
      div: '<div xmlns="http://www.w3.org/1999/xhtml"><a href="http://a b">x</a></div>',
    }),
  ],
  [
    'narrative-with-mdash',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml">a &mdash; b</div>' }),
  ],
  [
    'narrative-with-unknown-reference',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml">a &banana; b</div>' }),
  ],
  [
    'narrative-after-div',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml">a</div><div>b</div>' }),
  ],
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
