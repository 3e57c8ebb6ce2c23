import { describe, expect, test } from 'vitest';
import { validateBundle as validateR4 } from '../../../src/validate/versions/r4.ts';
import { type Told, withoutFacts } from '../../issues/without-facts.ts';
import { changed, example } from '../example.ts';
import { dateTime, error, status } from './expected.ts';

type Case = readonly [
  fault: string,
  path: readonly (string | number)[],
  value: unknown,
  ...issues: Told[],
];

/** https://hl7.org/fhir/R4/json.html and https://hl7.org/fhir/R4/observation.html */
const faults: readonly Case[] = [
  [
    'a required code is missing',
    ['status'],
    undefined,
    error('missing-property', ['status'], 'the required property is missing', status),
  ],
  [
    'a required structure is missing',
    ['code'],
    undefined,
    error('missing-property', ['code'], 'the required property is missing', {
      expected: 'a CodeableConcept',
    }),
  ],
  [
    'a code outside its required value set',
    ['status'],
    'finished',
    error('unknown-code', ['status'], 'the value is not one of the permitted codes', status),
  ],
  [
    'a code of another JSON type',
    ['status'],
    1,
    error('wrong-type', ['status'], 'the value is a whole number', status),
  ],
  [
    'null in place of a value',
    ['status'],
    null,
    error('wrong-type', ['status'], 'the value is null', status),
  ],
  [
    'a misspelt property',
    ['interpretaton'],
    [],
    error('unknown-property', ['interpretaton'], 'this is not a property of Observation', {
      expected: 'interpretation',
    }),
  ],
  [
    'a property like none',
    ['zzz'],
    1,
    error('unknown-property', ['[unknown property 13]'], 'this is not a property of Observation'),
  ],
  [
    'a property of R5 only',
    ['bodyStructure'],
    { reference: 'BodyStructure/1' },
    error('unknown-property', ['bodyStructure'], 'this is not a property of Observation'),
  ],
  [
    'an unknown property deep inside',
    ['code', 'coding', 0, 'kode'],
    'x',
    error('unknown-property', ['code', 'coding', 0, 'kode'], 'this is not a property of Coding', {
      expected: 'code',
    }),
  ],
  [
    'text in place of a structure',
    ['code'],
    'tender',
    error('wrong-type', ['code'], 'the value is text', { expected: 'a CodeableConcept' }),
  ],
  [
    'one in place of a list',
    ['category'],
    { text: 'Exam' },
    error('wrong-type', ['category'], 'the value is an object', { expected: 'a list' }),
  ],
  [
    'a list in place of one',
    ['subject'],
    [{ reference: 'Patient/1' }],
    error('wrong-type', ['subject'], 'the value is a list', { expected: 'a Reference' }),
  ],
  ['an empty list', ['category'], [], error('empty-value', ['category'], 'the list is empty')],
  [
    'an empty object',
    ['subject'],
    {},
    error('empty-value', ['subject'], 'the object has no properties'),
  ],
  ['empty text', ['code', 'text'], '', error('empty-value', ['code', 'text'], 'the text is empty')],
  [
    'an empty URI',
    ['code', 'coding', 0, 'system'],
    '',
    error(
      'invalid-value',
      ['code', 'coding', 0, 'system'],
      'the value does not have the required form',
      { expected: 'a URI without spaces' },
    ),
  ],
  [
    'text in place of a number',
    ['valueQuantity'],
    { value: '4.0' },
    error('wrong-type', ['valueQuantity', 'value'], 'the value is text', { expected: 'a number' }),
  ],
  [
    'a fraction in place of an integer',
    ['valueInteger'],
    1.5,
    error('wrong-type', ['valueInteger'], 'the value is a number', {
      expected: 'a whole number of 32 bits',
    }),
  ],
  [
    'an integer of more than 32 bits',
    ['valueInteger'],
    2 ** 31,
    error('invalid-value', ['valueInteger'], 'the value does not have the required form', {
      expected: 'a whole number of 32 bits',
    }),
  ],
  [
    'text in place of a boolean',
    ['valueBoolean'],
    'true',
    error('wrong-type', ['valueBoolean'], 'the value is text', { expected: 'true or false' }),
  ],
  [
    'a date without its zeros',
    ['effectiveDateTime'],
    '2024-3-1',
    error(
      'invalid-value',
      ['effectiveDateTime'],
      'the value does not have the required form',
      dateTime,
    ),
  ],
  [
    'a time without a zone',
    ['effectiveDateTime'],
    '2024-03-01T09:30:00',
    error(
      'invalid-value',
      ['effectiveDateTime'],
      'the value does not have the required form',
      dateTime,
    ),
  ],
  [
    'an id of other characters',
    ['id'],
    'a b',
    error('invalid-value', ['id'], 'the value does not have the required form', {
      expected: 'an id of 1 to 64 letters, digits, hyphens and dots',
    }),
  ],
  [
    'a code with a space at its end',
    ['category', 0, 'coding', 0, 'code'],
    'exam ',
    error(
      'invalid-value',
      ['category', 0, 'coding', 0, 'code'],
      'the value does not have the required form',
      { expected: 'a code without spaces at its ends' },
    ),
  ],
  [
    'an extension without url',
    ['extension'],
    [{ valueString: 'x' }],
    error('missing-property', ['extension', 0, 'url'], 'the required property is missing', {
      expected: 'a URI without spaces',
    }),
  ],
  [
    'narrative without its status',
    ['text'],
    { div: '<div xmlns="http://www.w3.org/1999/xhtml">tender</div>' },
    error('missing-property', ['text', 'status'], 'the required property is missing', {
      expected: 'generated, extensions, additional or empty',
    }),
  ],
  [
    'a contained resource of no known type',
    ['contained'],
    [{ resourceType: 'Pateint', id: 'a', managingOrganization: { reference: '#' } }],
    error(
      'unknown-code',
      ['contained', 0, 'resourceType'],
      'FHIR R4 has no resource type with this name',
      {
        expected: 'Patient',
      },
    ),
  ],
  [
    'a contained resource without type',
    ['contained'],
    [{ id: 'a', managingOrganization: { reference: '#' } }],
    error(
      'missing-property',
      ['contained', 0, 'resourceType'],
      'the required property is missing',
      {
        expected:
          'Account, ActivityDefinition, AdverseEvent, AllergyIntolerance, Appointment, AppointmentResponse, AuditEvent, Basic, Binary, BiologicallyDerivedProduct, BodyStructure, Bundle or one of 134 others',
      },
    ),
  ],
  [
    'half a surrogate pair',
    ['code', 'text'],
    'tender\uD83D',
    error('invalid-unicode', ['code', 'text'], 'the text holds half a surrogate pair, U+D83D', {
      expected: 'Unicode text whose only control characters are tab, line feed and carriage return',
    }),
  ],
  [
    'two faults at two places',
    ['valueQuantity'],
    { value: true, unitt: 'mm' },
    error('wrong-type', ['valueQuantity', 'value'], 'the value is true', { expected: 'a number' }),
    error('unknown-property', ['valueQuantity', 'unitt'], 'this is not a property of Quantity', {
      expected: 'unit',
    }),
  ],
];

describe('one fault in Observation-abdo-tender gives one issue, at the property', () => {
  for (const [fault, path, value, ...issues] of faults) {
    test(fault, () => {
      const base = example('Observation-abdo-tender');
      // The example has a value of its own, and can have but one.
      const free = /^value/.test(String(path[0]))
        ? changed(base, ['valueBoolean'], undefined)
        : base;
      const resource = changed(free, path, value);
      const conformance = 'does-not-conform';
      const found = validateR4(resource);
      expect(found).toMatchObject({ conformance, valid: false, issues });
    });
  }

  test('inside a bundle the path leads through the entry', () => {
    const bundle = changed(
      example('Bundle-lipids'),
      ['entry', 2, 'resource', 'status'],
      'finished',
    );
    expect(withoutFacts(validateR4(bundle).issues)).toMatchObject([
      error(
        'unknown-code',
        ['entry', 2, 'resource', 'status'],
        'the value is not one of the permitted codes',
        status,
      ),
    ]);
  });
});
