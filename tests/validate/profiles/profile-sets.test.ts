import { describe, expect, test } from 'vitest';
import { validateBundle } from '../../../src/validate/versions/r4.ts';
import { changed } from '../example.ts';
import {
  clinic,
  codeSystem,
  kinds,
  observation,
  profile,
  shift,
  text,
  told,
  unchecked,
  valueSet,
  worker,
} from './adopter-profile.ts';

describe('value sets', () => {
  const held = (compose: object, code: string): string[] => {
    const set = { ...valueSet, compose };
    const resource = changed(observation, ['category', 0, 'coding', 0, 'code'], code);
    return told(resource, { profiles: [profile, worker, shift, codeSystem, set] }).filter(
      (line) => line !== unchecked,
    );
  };
  const refused = ['error unknown-code category.0'];
  const other = { url: `${clinic}/ValueSet/other`, resourceType: 'ValueSet' };

  test.each([
    ['a whole system', { include: [{ system: kinds }] }, 'other', []],
    [
      'listed codes',
      { include: [{ system: kinds, concept: [{ code: 'skin' }] }] },
      'other',
      refused,
    ],
    [
      'all but some',
      { include: [{ system: kinds }], exclude: [{ system: kinds, concept: [{ code: 'other' }] }] },
      'other',
      refused,
    ],
    [
      'all but others',
      { include: [{ system: kinds }], exclude: [{ system: kinds, concept: [{ code: 'skin' }] }] },
      'other',
      [],
    ],
    // What another system holds, or a filter lets pass, takes a terminology server.
    [
      'an unknown system',
      { include: [{ system: `${kinds}-2` }] },
      'other',
      ['information unchecked-rule category.0'],
    ],
    [
      'a filter',
      {
        include: [{ system: kinds, filter: [{ property: 'concept', op: 'is-a', value: 'skin' }] }],
      },
      'other',
      ['information unchecked-rule category.0'],
    ],
    [
      'an unknown set',
      { include: [{ valueSet: [other.url] }] },
      'other',
      ['information unchecked-rule category.0'],
    ],
  ])('%s', (_, compose, code, issues) => {
    expect(held(compose, code)).toEqual(issues);
  });

  test('an expansion counts before the rules', () => {
    const expansion = {
      contains: [{ system: kinds, contains: [{ system: kinds, code: 'other' }] }],
    };
    const set = { ...valueSet, expansion };
    const resource = changed(observation, ['category', 0, 'coding', 0, 'code'], 'other');
    const given = { profiles: [profile, worker, shift, codeSystem, set] };
    expect(told(resource, given).filter((line) => line !== unchecked)).toEqual([]);
  });
});

describe('slices by the profile that a resource fits', () => {
  const bundleProfile = {
    resourceType: 'StructureDefinition',
    url: `${clinic}/StructureDefinition/sheet`,
    type: 'Bundle',
    snapshot: {
      element: [
        { id: 'Bundle', path: 'Bundle' },
        {
          id: 'Bundle.entry',
          path: 'Bundle.entry',
          slicing: { discriminator: [{ type: 'profile', path: 'resource' }], rules: 'open' },
        },
        { id: 'Bundle.entry:worker', path: 'Bundle.entry', sliceName: 'worker', min: 1, max: '1' },
        {
          id: 'Bundle.entry:worker.resource',
          path: 'Bundle.entry.resource',
          type: [{ code: 'Patient', profile: [worker.url] }],
        },
      ],
    },
  };
  const sheet = (patients: readonly object[]): object => ({
    resourceType: 'Bundle',
    meta: { profile: [bundleProfile.url] },
    type: 'collection',
    entry: patients.map((more, at) => ({
      fullUrl: `${clinic}/Patient/p${at}`,
      resource: { resourceType: 'Patient', id: `p${at}`, text, ...more },
    })),
  });
  const known = { identifier: [{ value: '7' }] };
  const given = { profiles: [bundleProfile, worker] };

  test.each([
    ['one that fits', [known, {}], []],
    ['none that fits', [{}, {}], ['error missing-property entry']],
    ['two that fit', [known, known], ['error too-many entry']],
  ])('%s', (_, patients, issues) => {
    expect(told(sheet(patients), given)).toEqual(issues);
  });

  test('a profile that was not given leaves the slices open', () => {
    expect(told(sheet([known]), { profiles: [bundleProfile] })).toEqual([
      'information unchecked-rule entry.0',
    ]);
  });
});

describe('a profile without snapshot', () => {
  const base = 'http://hl7.org/fhir/StructureDefinition';
  const made = (of: string, ...element: object[]): object => ({
    resourceType: 'StructureDefinition',
    url: `${clinic}/StructureDefinition/made`,
    type: 'Observation',
    baseDefinition: of,
    differential: { element },
  });
  const claimed = changed(
    observation,
    ['meta', 'profile', 0],
    `${clinic}/StructureDefinition/made`,
  );
  const narrow = { id: 'Observation.method', path: 'Observation.method', max: '0' };

  test.each([
    ['an element', { path: 'Observation.method', max: '0' }, 'error too-many method'],
    [
      'a choice by its short name',
      { path: 'Observation.valueQuantity', max: '0' },
      'error too-many value',
    ],
    [
      'a choice by the short name of another type',
      { path: 'Observation.valueString', min: 0 },
      'error unknown-property valueQuantity',
    ],
    [
      'an element of a data type',
      { path: 'Observation.code.coding.version', min: 1 },
      'error missing-property code.coding.0.version',
    ],
    [
      'a slice by its extension',
      {
        id: 'Observation.extension:shift',
        path: 'Observation.extension',
        sliceName: 'shift',
        min: 2,
        type: [{ code: 'Extension', profile: [shift.url] }],
      },
      'error missing-property extension',
    ],
  ])('asks for %s', (_, element, issue) => {
    const given = { profiles: [made(`${base}/Observation`, element)] };
    expect(told(claimed, given).filter((line) => line.startsWith('error'))).toEqual([issue]);
  });

  test('leaves the values of a part of an extension to its type', () => {
    const url = `${clinic}/StructureDefinition/parted`;
    const part = 'Extension.extension';
    const parted = {
      ...made(
        `${base}/Extension`,
        { id: `${part}:a`, path: part, sliceName: 'a' },
        { id: `${part}:a.url`, path: `${part}.url`, fixedUri: 'a' },
        { id: `${part}:a.value[x]`, path: `${part}.value[x]` },
      ),
      ...{ url, type: 'Extension', context: [{ type: 'element', expression: 'Observation' }] },
    };
    const extension = [{ url, extension: [{ url: 'a', valueCoding: { code: 'x' } }] }];
    expect(told(changed(observation, ['extension'], extension), { profiles: [parted] })).toEqual([
      expect.stringContaining('unchecked-profile'),
    ]);
  });

  test('asks for what its own base asks for, and more', () => {
    const own = made(profile.url, narrow);
    const given = { profiles: [own, profile, worker, shift, codeSystem, valueSet] };
    const hot = changed(claimed, ['status'], 'amended');
    expect(told(hot, given)).toEqual(['error invalid-value status', 'error too-many method']);
  });

  test.each([
    ['that nobody gave', `${clinic}/StructureDefinition/other`],
    ['of HL7 that is no type', `${base}/vitalsigns`],
  ])('on a base %s is said to be unchecked', (_, of) => {
    const { unchecked } = validateBundle(claimed, { profiles: [made(of, narrow)] });
    expect(unchecked.map(({ why }) => why)).toContainEqual(expect.stringContaining(of));
  });

  test('that is its own base comes to an end', () => {
    const given = { profiles: [made(`${clinic}/StructureDefinition/made`, narrow)] };
    expect(told(claimed, given)).toContain('error too-many method');
  });
});
