import { describe, expect, test } from 'vitest';
import { thoroughR4 } from '../../../src/validate/thorough/thorough.ts';
import { compileProfiles, validateBundle } from '../../../src/validate/versions/r4.ts';
import {
  compileProfiles as compileProfilesR5,
  validateBundle as validateR5,
} from '../../../src/validate/versions/r5.ts';
import { changed } from '../example.ts';
import {
  clinic,
  codeSystem,
  kinds,
  observation,
  profile,
  profiles,
  shift,
  told,
  unchecked,
  url,
  valueSet,
  worker,
} from './adopter-profile.ts';

const shiftUrl = `${clinic}/StructureDefinition/shift`;

type Case = readonly [what: string, path: (string | number)[], value: unknown, ...told: string[]];

const cases: readonly Case[] = [
  ['nothing wrong', ['id'], 'a'],
  ['fixed value', ['status'], 'amended', 'error invalid-value status'],
  [
    'pattern',
    ['code', 'coding', 0, 'code'],
    'skin',
    'error wrong-display code.coding.0.display',
    'error invalid-value code',
  ],
  ['pattern among more codings', ['code', 'coding', 1], { system: kinds, code: 'skin' }],
  ['cardinality: too few', ['category'], undefined, 'error missing-property category'],
  [
    'cardinality: too many',
    ['category', 1],
    { coding: [{ system: kinds, code: 'wrist' }] },
    'error too-many category',
  ],
  ['cardinality: none', ['performer'], [{ display: 'Night nurse' }], 'error too-many performer'],
  [
    'required binding',
    ['category', 0, 'coding', 0, 'code'],
    'other',
    'error unknown-code category.0',
  ],
  ['type of a choice', ['valueQuantity'], undefined, 'error missing-property value'],
  ['least value', ['valueQuantity', 'value'], 19.9, 'error invalid-value valueQuantity.value'],
  ['greatest value', ['valueQuantity', 'value'], 45.1, 'error invalid-value valueQuantity.value'],
  ['bounds hold at the bounds', ['valueQuantity', 'value'], 45],
  ['length', ['method', 'text'], 'Probes', 'error too-large method.text'],
  ['length in characters, not in halves of them', ['method', 'text'], '🌡🌡🌡🌡🌡'],
  [
    'slice: too few',
    ['component', 0, 'code', 'text'],
    'Right',
    'error unknown-property component.0',
    'error missing-property component',
  ],
  [
    'slice: its own elements',
    ['component', 0, 'valueQuantity'],
    undefined,
    'error missing-property component.0.value',
  ],
  ['extension: missing', ['extension'], undefined, 'error missing-property extension'],
  [
    'extension: value of another type',
    ['extension', 0],
    { url: shiftUrl, valueString: 'late' },
    'error wrong-type extension.0.valueString',
  ],
  [
    'profile of the target',
    ['contained', 0, 'identifier'],
    undefined,
    'error wrong-target subject',
  ],
  [
    'profile of the target: extension of a primitive',
    ['contained', 0, '_birthDate'],
    { extension: [{ url: 'https://clinic.example/seen', valueBoolean: true }] },
    'information unchecked-extension contained.0._birthDate.extension.0',
    'error wrong-target subject',
  ],
];

describe('a resource is held to the profile of an adopter', () => {
  test.each(cases.map(([what, path, value, ...issues]) => ({ what, path, value, issues })))(
    '$what',
    ({ path, value, issues }) => {
      expect(told(changed(observation, path, value))).toEqual(issues);
    },
  );

  test.each([{ profiles }, { profiles, level: 'thorough', engine: thoroughR4 }] as const)(
    'its own invariants are evaluated at both levels',
    (options) => {
      expect(told(observation, options)).toEqual([]);
      const broken = validateBundle(changed(observation, ['issued'], undefined), options);
      expect(broken.issues).toEqual([
        {
          code: 'broken-invariant',
          severity: 'error',
          message: 'a rule of the profile does not hold',
          path: [],
          facts: { reason: 'profile' },
          rule: `${url}#wrist-1`,
        },
      ]);
    },
  );

  test('in a bundle, at the entry', () => {
    const resource = { ...observation, id: 'a', status: 'amended' };
    const entry = [{ fullUrl: `${clinic}/Observation/a`, resource }];
    const bundle = { resourceType: 'Bundle', type: 'collection', entry };
    expect(told(bundle)).toContain('error invalid-value entry.0.resource.status');
  });

  test('given as a list, it is the same', () => {
    const list = [profile, worker, shift, codeSystem, valueSet];
    expect(told(observation, { profiles: list })).toEqual(told(observation));
  });

  test('what is wrong with the list is told with the bundle', () => {
    const list = [profile, worker, shift, codeSystem, valueSet, {}];
    const added = told(observation, { profiles: list }).filter(
      (line) => !told(observation).includes(line),
    );
    expect(added).toEqual(['warning invalid-value profiles.5']);
    expect(told(observation, { profiles: compileProfiles(list) })).toEqual(told(observation));
  });

  test('not where it is not claimed', () => {
    const { meta: _, ...rest } = observation;
    expect(told({ ...rest, status: 'amended' })).toEqual([]);
  });

  test('no value of a patient is in an issue unless asked for', () => {
    const hot = changed(observation, ['valueQuantity', 'value'], 99.125);
    expect(JSON.stringify(validateBundle(hot, { profiles }))).not.toContain('99.125');
    const { issues } = validateBundle(hot, { profiles, includeValues: true });
    expect(issues.map(({ received }) => received)).toContain('99.125');
  });
});

describe('claims', () => {
  test('of a profile that was not given are said to be unchecked, once', () => {
    const entry = ['a', 'b'].map((id) => ({
      fullUrl: `${clinic}/Observation/${id}`,
      resource: { ...observation, id },
    }));
    const found = told({ resourceType: 'Bundle', type: 'collection', entry }, {});
    expect(found.filter((line) => line.includes('profile'))).toEqual([
      'warning unchecked-profile entry.0.resource.meta.profile.0',
    ]);
  });

  test('of a profile on another type are wrong', () => {
    const claimed = changed(observation, ['meta', 'profile', 0], worker.url);
    expect(told(claimed)).toEqual(['error contradiction meta.profile.0']);
  });

  test.each(['Observation', 'Patient'])('of the definition of %s itself', (type) => {
    const base = `http://hl7.org/fhir/StructureDefinition/${type}`;
    const wrong = type === 'Patient' ? ['error contradiction meta.profile.0'] : [];
    expect(told(changed(observation, ['meta', 'profile', 0], base))).toEqual(wrong);
  });

  // A canonical may name a version: https://hl7.org/fhir/R4/references.html#canonical.
  const base = 'http://hl7.org/fhir/StructureDefinition/Observation';
  const versioned = { ...profile, version: '2.1.0' };
  test.each([
    ['2.1.0', `${profile.url}|2.1.0`, []],
    ['the first numbers', `${profile.url}|2.1`, []],
    ['another', `${profile.url}|2.0.0`, ['warning unchecked-profile meta.profile.0']],
    [
      'a number that begins alike',
      `${profile.url}|2.1.01`,
      ['warning unchecked-profile meta.profile.0'],
    ],
    ['FHIR itself', `${base}|4.0.1`, []],
    ['another FHIR', `${base}|5.0.0`, ['warning unchecked-profile meta.profile.0']],
  ])('that name the version %s', (_name, claim, expected) => {
    const claimed = changed(observation, ['meta', 'profile', 0], claim);
    const found = told(claimed, { profiles: [versioned, worker, shift, codeSystem, valueSet] });
    expect(found.filter((line) => line.includes('profile'))).toEqual(expected);
  });
});

test.each([
  ['profiles of another version', compileProfilesR5([profile])],
  ['one profile', profile],
  ['text', 'profiles'],
  ['null', null],
])('%s is a mistake of the caller', (_, given) => {
  // As from plain JavaScript.
  const options = { profiles: given } as Parameters<typeof validateBundle>[1];
  expect(() => validateBundle(observation, options)).toThrow(
    new TypeError(
      'cannot validate against the profiles: expected a list, or what compileProfiles gave for FHIR R4',
    ),
  );
});

describe('what cannot be used as a profile is told', () => {
  const bad: readonly [what: string, value: unknown, ...paths: string[]][] = [
    ['null', null, 'profiles.0'],
    ['text', 'StructureDefinition', 'profiles.0'],
    ['an empty object', {}, 'profiles.0'],
    ['no snapshot', { ...profile, snapshot: undefined }, 'profiles.0'],
    ['an empty snapshot', { ...profile, snapshot: { element: [] } }, 'profiles.0'],
    ['a snapshot of another form', { ...profile, snapshot: [7] }, 'profiles.0'],
    ['no url', { ...profile, url: undefined }, 'profiles.0'],
    ['another version', { ...profile, fhirVersion: '5.0.0' }, 'profiles.0.fhirVersion'],
    [
      'an element below no other',
      { ...profile, snapshot: { element: [{ id: 'Observation' }, { id: 'Observation.a.b' }] } },
      'profiles.0.snapshot.element.1.id',
    ],
    [
      'elements without id',
      { ...profile, snapshot: { element: [{ path: 'Observation' }, { path: 'Observation' }] } },
      'profiles.0.snapshot.element.1.id',
      'profiles.0.snapshot',
    ],
  ];

  test.each(bad.map(([what, value, ...paths]) => ({ what, value, paths })))(
    '$what',
    ({ value, paths }) => {
      const { issues } = compileProfiles([value]);
      expect(issues.map(({ path }) => path.join('.'))).toEqual(paths);
      expect(issues.every(({ severity }) => severity === 'warning')).toBe(true);
      expect(() => validateBundle(observation, { profiles: [value] })).not.toThrow();
    },
  );

  test('the same url twice', () => {
    const { issues } = compileProfiles([profile, profile]);
    expect(issues.map(({ code, path }) => `${code} ${path.join('.')}`)).toEqual([
      'duplicate-key profiles.1.url',
    ]);
  });

  test('an invariant that is no FHIRPath', () => {
    const broken = changed(
      profile,
      ['snapshot', 'element', 0, 'constraint', 0, 'expression'],
      '((',
    );
    const given = { profiles: [broken, worker, shift, codeSystem, valueSet] };
    expect(told(observation, { ...given, level: 'thorough', engine: thoroughR4 })).toEqual([
      unchecked,
    ]);
  });

  test('names that every object has', () => {
    const element = ['constructor', '__proto__', 'toString'].map((name) => ({
      id: `Observation.${name}`,
      path: `Observation.${name}`,
      min: 1,
    }));
    const odd = { ...profile, snapshot: { element: [{ id: 'Observation' }, ...element] } };
    const found = told(observation, { profiles: [odd] }).filter((line) => line.startsWith('error'));
    expect(found).toEqual([
      'error missing-property constructor',
      'error missing-property __proto__',
      'error missing-property toString',
    ]);
  });

  test('value sets that include each other', () => {
    const sets = ['a', 'b'].map((name, at) => ({
      resourceType: 'ValueSet',
      url: `${clinic}/ValueSet/${name}`,
      compose: { include: [{ valueSet: [`${clinic}/ValueSet/${at === 0 ? 'b' : 'a'}`] }] },
    }));
    expect(compileProfiles(sets).issues).toEqual([]);
  });
});

test('R5 takes profiles of R5', () => {
  const ofR5 = { ...profile, fhirVersion: '5.0.0' };
  const { issues } = validateR5(
    { ...observation, status: 'amended' },
    { profiles: [ofR5, worker, shift, codeSystem, valueSet] },
  );
  expect(issues.map(({ code, path }) => `${code} ${path.join('.')}`)).toContain(
    'invalid-value status',
  );
});
