import { atType } from '../fault-kinds.ts';
import type { NamedFault } from '../places.ts';
import { core } from './core.ts';
/** Attachments, contacts, identifiers, names, addresses, codings and concepts. */
export const oddNamesAndCodes: readonly NamedFault[] = [
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
];
