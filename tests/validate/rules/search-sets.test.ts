import { describe, expect, test } from 'vitest';
import { validateBundle } from '../../../src/validate/versions/all-r4.ts';

// Verdicts as HL7's validator (HAPI 8.4.0) gave them on bundles of these forms, unless a comment says
// what it rests on.

const base = 'https://clinic.example/fhir';
const text = { status: 'generated', div: '<div xmlns="http://www.w3.org/1999/xhtml">x</div>' };
const self = { relation: 'self', url: `${base}/Patient?name=x` };

function patient(id: string | undefined, more: object = {}): object {
  return { resourceType: 'Patient', ...(id !== undefined && { id }), text, ...more };
}

function entry(resource: object, mode?: string, url = `${base}/Patient/p`): object {
  return { fullUrl: url, resource, ...(mode !== undefined && { search: { mode } }) };
}

function searchset(entries: readonly object[], link: readonly object[] = [self]): object {
  return { resourceType: 'Bundle', id: 'b', type: 'searchset', link, entry: entries };
}

function told(bundle: object): string[] {
  return validateBundle(bundle).issues.map(
    ({ severity, code, path }) => `${severity} ${code} ${path.join('.')}`,
  );
}

const observation = {
  resourceType: 'Observation',
  id: 'o',
  text,
  status: 'final',
  code: { text: 'x' },
};
const url = `${base}/Observation/o`;

describe('search sets', () => {
  test.each([
    ['a match', searchset([entry(patient('p'), 'match')]), []],
    ['no mode', searchset([entry(patient('p'))]), []],
    [
      'an include of another type',
      searchset([entry(patient('p'), 'match'), entry(observation, 'include', url)]),
      [],
    ],
    [
      'a match of another type',
      searchset([entry(observation, 'match', url)]),
      ['error contradiction entry.0.resource'],
    ],
    [
      'another type without mode',
      searchset([entry(observation, undefined, url)]),
      ['warning contradiction entry.0.resource'],
    ],
    [
      'an outcome that is none',
      searchset([entry(patient('p'), 'outcome')]),
      ['error contradiction entry.0.resource'],
    ],
    [
      'a result without id',
      searchset([
        entry(patient(undefined), 'match', 'urn:uuid:53fefa32-fcbb-4ff8-8a92-55ee120877b7'),
      ]),
      ['error missing-property entry.0.resource.id'],
    ],
    [
      'two next pages',
      searchset(
        [entry(patient('p'), 'match')],
        [self, { relation: 'next', url: `${base}/a` }, { relation: 'next', url: `${base}/b` }],
      ),
      ['error too-many link.2.relation'],
    ],
    [
      'a page in a collection',
      {
        resourceType: 'Bundle',
        id: 'b',
        type: 'collection',
        link: [{ relation: 'next', url: `${base}/a` }],
        entry: [entry(patient('p'))],
      },
      ['error contradiction link.0.relation'],
    ],
    [
      'an operation that answers with other types',
      searchset(
        [entry(observation, 'match', url)],
        [{ relation: 'self', url: `${base}/Patient/p/$everything` }],
      ),
      [],
    ],
  ])('%s', (_, bundle, expected) => {
    expect(told(bundle)).toEqual(expected);
  });
});

describe('versions in a document', () => {
  const composition = (reference: string): object => ({
    resourceType: 'Composition',
    id: 'c',
    text,
    status: 'final',
    type: { text: 't' },
    date: '2024-01-01',
    title: 't',
    author: [{ display: 'd' }],
    section: [{ title: 's', text, entry: [{ reference }, { reference: 'Patient/p/_history/2' }] }],
  });
  const document = (reference: string): object => ({
    resourceType: 'Bundle',
    id: 'b',
    type: 'document',
    identifier: { system: 'https://clinic.example', value: '1' },
    timestamp: '2024-01-01T00:00:00Z',
    entry: [
      { fullUrl: `${base}/Composition/c`, resource: composition(reference) },
      entry(patient('p', { meta: { versionId: '1' } })),
      entry(patient('p', { meta: { versionId: '2' } })),
    ],
  });

  // https://hl7.org/fhir/R4/bundle.html#references: the version is matched by meta.versionId.
  test('each is found by its number', () => {
    expect(told(document('Patient/p/_history/1'))).toEqual([]);
  });

  test('one that is not there is not found', () => {
    expect(
      told(document('Patient/p/_history/3')).filter((line) => line.startsWith('error')),
    ).not.toEqual([]);
  });
});

describe('conditional references', () => {
  const transaction = (reference: string): object => ({
    resourceType: 'Bundle',
    id: 'b',
    type: 'transaction',
    entry: [
      {
        fullUrl: 'urn:uuid:53fefa32-fcbb-4ff8-8a92-55ee120877b7',
        resource: { ...observation, id: undefined, subject: { reference } },
        request: { method: 'POST', url: 'Observation' },
      },
    ],
  });

  test.each([
    'Patient?identifier=a|b',
    'Patient?identifier=a%7Cb&birthdate=ge2020',
    'Patient?name:exact=x',
  ])('%s is well-formed', (reference) => {
    expect(told(transaction(reference)).filter((line) => line.includes('reference'))).toEqual([]);
  });

  test.each([
    'Patient?',
    'Patient?identifier=1&?==',
    'Patient?identifier',
    '?identifier=1',
    'Patient?=1',
  ])('%s is not', (reference) => {
    expect(told(transaction(reference))).toContain(
      'error invalid-value entry.0.resource.subject.reference',
    );
  });
});

describe('codes', () => {
  const coded = (system: string, code: string): string[] =>
    told({ ...observation, code: { coding: [{ system, code }] } });
  const sct = 'http://snomed.info/sct';

  // 128045006, 363698007 and 56459004 are ids in the examples of HL7's page on SNOMED CT.
  test.each([
    [sct, '128045006'],
    [sct, '128045006:{363698007=56459004}'],
    [sct, '128045006 |Cellulitis| : 363698007 |Finding site| = 56459004 |Foot|'],
    ['http://loinc.org', '29545-1'],
    ['http://loinc.org', 'LA6576-8'],
    ['http://loinc.org', 'LP14885-5'],
  ])('%s %s', (system, code) => {
    expect(coded(system, code)).toEqual([]);
  });

  test.each([
    [sct, 'abc'],
    [sct, '12345'],
    [sct, '128045007'],
    [sct, '128045006x'],
    [sct, '128045006:{363698007=56459005}'],
    ['http://loinc.org', 'abc'],
    ['http://loinc.org', 'ABC'],
    ['http://loinc.org', '29463-8'],
  ])('%s has no code %s', (system, code) => {
    expect(coded(system, code)).toEqual(['error unknown-code code.coding.0.code']);
  });

  // https://terminology.hl7.org/CodeSystem-v2-0203.html lists NNxxx, with a country in place of xxx.
  test.each([
    ['NNFIN', []],
    ['NNDEU', []],
    ['NNZ', ['error unknown-code identifier.0.type.coding.0.code']],
  ])('identifier type %s', (code, expected) => {
    const system = 'http://terminology.hl7.org/CodeSystem/v2-0203';
    const errors = told(
      patient('p', { identifier: [{ value: 'x', type: { coding: [{ system, code }] } }] }),
    );
    expect(errors.filter((line) => line.startsWith('error'))).toEqual(expected);
  });
});
