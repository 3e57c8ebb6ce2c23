import { describe, expect, test } from 'vitest';
import { validateBundle } from '../../../src/validate/versions/all-r4.ts';
import * as r5 from '../../../src/validate/versions/all-r5.ts';

// Rules of definitions that rest on the words of the element named beside each. What HL7's validator
// says of the plain ones stands in kept-verdicts.test.ts.

const base = 'https://clinic.example/fhir';
const text = { status: 'generated', div: '<div xmlns="http://www.w3.org/1999/xhtml">x</div>' };

function head(resourceType: string, more: object): object {
  const url = `${base}/${resourceType}/x`;
  return { resourceType, id: 'x', text, url, name: 'X', status: 'draft', ...more };
}

function told(resource: object, validate: typeof validateBundle = validateBundle): string[] {
  return validate(resource)
    .issues.filter(({ severity }) => severity === 'error')
    .map(({ code, path }) => `${code} ${path.join('.')}`);
}

function profile(type: string, ...elements: readonly object[]): object {
  return head('StructureDefinition', {
    kind: 'resource',
    abstract: false,
    type,
    baseDefinition: `http://hl7.org/fhir/StructureDefinition/${type}`,
    derivation: 'constraint',
    differential: { element: elements },
  });
}

describe('paths of elements, which a constraint does not invent (StructureDefinition.derivation)', () => {
  test.each([
    ['Patient', 'Patient.contact.name.family', true],
    ['Patient', 'Patient.deceased[x]', true],
    ['Patient', 'Patient.deceasedBoolean', true],
    ['Patient', 'Patient.birthDate.extension', true],
    ['Patient', 'Patient.contact.naem', false],
    ['Observation', 'Observation.value[x].coding.code', true],
    ['Observation', 'Observation.valueQuantity.cod', false],
    ['Questionnaire', 'Questionnaire.item.item.item.text', true],
    ['Bundle', 'Bundle.entry.resource.anything', true],
  ])('%s: %s', (type, path, sound) => {
    const expected = sound ? [] : ['invalid-value differential.element.0.path'];
    expect(told(profile(type, { id: path, path }))).toEqual(expected);
  });

  test('of a definition for another version are not looked at', () => {
    const other = profile('Patient', { id: 'Patient.banana', path: 'Patient.banana' });
    expect(told({ ...other, fhirVersion: '3.0.1' })).toEqual([]);
  });
});

test('fixed values and patterns have a type of the element (ElementDefinition.fixed[x])', () => {
  const element = (more: object): object => ({
    id: 'Observation.value[x]',
    path: 'Observation.value[x]',
    ...more,
  });
  expect(told(profile('Observation', element({ patternQuantity: { unit: 'mm' } })))).toEqual([]);
  const narrowed = element({ type: [{ code: 'string' }], patternQuantity: { unit: 'mm' } });
  expect(told(profile('Observation', narrowed))).toEqual([
    'wrong-type differential.element.0.patternQuantity',
  ]);
});

test('a place of an extension that only some versions have', () => {
  const url = 'http://hl7.org/fhir/StructureDefinition/version-specific-use';
  const extension = (context: object): object => ({
    ...profile('Extension', { id: 'Extension', path: 'Extension' }),
    kind: 'complex-type',
    context: [{ type: 'element', ...context }],
  });
  expect(told(extension({ expression: 'Patient.contact' }))).toEqual([]);
  expect(told(extension({ expression: 'Patient.banana' }))).toEqual([
    'invalid-value context.0.expression',
  ]);
  const some = [{ url, extension: [{ url: 'startFhirVersion', valueCode: '5.0' }] }];
  expect(told(extension({ expression: 'Patient.banana', extension: some }))).toEqual([]);
});

describe('code systems', () => {
  const system = (more: object): object => head('CodeSystem', { content: 'complete', ...more });
  const nested = [{ code: 'a', concept: [{ code: 'b' }] }];
  test.each([
    ['count of all levels', system({ count: 2, concept: nested }), []],
    ['count of the top alone', system({ count: 1, concept: nested }), ['contradiction count']],
    ['a fragment of more', system({ content: 'fragment', count: 9, concept: nested }), []],
    [
      'a fragment of less',
      system({ content: 'fragment', count: 1, concept: nested }),
      ['contradiction count'],
    ],
    [
      'a url that is a UUID',
      { ...system({ concept: nested }), url: 'urn:uuid:53fefa32-fcbb-4ff8-8a92-55ee120877b7' },
      [],
    ],
  ])('%s', (_, resource, expected) => {
    expect(told(resource)).toEqual(expected);
  });

  test('a code on two levels, in R5, whose csd-1 passes over it', () => {
    const concept = [{ code: 'a', concept: [{ code: 'b' }] }, { code: 'b' }];
    const validate = r5.validateBundle;
    expect(told(system({ concept }), validate)).toEqual(['duplicate-key concept.1.code']);
    expect(told(system({ concept: [{ code: 'a' }, { code: 'a' }] }), validate)).toEqual([
      'broken-invariant ',
    ]);
  });
});

test('codes of a map, by systems that are held and in no stated version (ConceptMap.group)', () => {
  const gender = 'http://hl7.org/fhir/administrative-gender';
  const map = (group: object, code: string): object =>
    head('ConceptMap', {
      group: [{ source: gender, target: `${base}/x`, ...group, element: [{ code }] }],
    });
  expect(told(map({}, 'male'))).toEqual([]);
  expect(told(map({}, 'banana'))).toEqual(['unknown-code group.0.element.0.code']);
  expect(told(map({ sourceVersion: '9' }, 'banana'))).toEqual([]);
  expect(told(map({ source: `${base}/y` }, 'banana'))).toEqual([]);
});
