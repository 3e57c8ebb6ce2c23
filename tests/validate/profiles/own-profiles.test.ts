import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { CANONICAL_BASE } from '../../../src/fhir/names/systems.ts';
import { packageDefinitions } from '../../../src/generate/fhir-package/package-files.ts';
import { toBundleOrThrow } from '../../../src/index.ts';
import type { Issue } from '../../../src/issues/issue.ts';
import { sampleExams } from '../../../src/testing/sample-exam.ts';
import { thoroughR4, thoroughR5 } from '../../../src/validate/thorough/thorough.ts';
import {
  compileProfiles,
  type Profiles,
  validateBundle,
} from '../../../src/validate/versions/r4.ts';
import {
  compileProfiles as compileProfilesR5,
  validateBundle as validateR5,
} from '../../../src/validate/versions/r5.ts';
import { sampled } from '../../sampled.ts';
import { changed } from '../example.ts';

// That the examples conform to the profiles in profiles/ is the word of HL7's validator, in
// tests/reference/profiles.test.ts; here ours must say the same, and find what is broken in them.

const folder = new URL('../../../profiles/examples/', import.meta.url);
let profiles: Profiles;

beforeAll(async () => {
  const order = { version: 'R4', base: CANONICAL_BASE, packageVersion: '0.1.0' } as const;
  profiles = compileProfiles(await packageDefinitions(order));
});

function read(name: string): Record<string, unknown> {
  return JSON.parse(readFileSync(new URL(`${name}.json`, folder), 'utf8'));
}

function thorough(resource: unknown): readonly Issue[] {
  return validateBundle(resource, { profiles, level: 'thorough', engine: thoroughR4 }).issues;
}

function lines(issues: readonly Issue[]): string[] {
  return issues.map(({ severity, code, path }) => `${severity} ${code} ${path.join('.')}`);
}

/** What rests on one of our profiles. */
function ofProfiles(issues: readonly Issue[]): string[] {
  return lines(issues.filter(({ rule }) => rule?.startsWith(CANONICAL_BASE)));
}

test('the definitions can all be used', () => {
  // ConceptMaps and NamingSystems say nothing that a resource could be held to.
  expect(profiles.issues.filter(({ severity }) => severity !== 'information')).toEqual([]);
  expect(profiles.byUrl.size).toBe(12);
});

describe('examples of the profiles', () => {
  test.each(readdirSync(folder))('%s conforms', (file) => {
    const issues = thorough(read(file.replace('.json', '')));
    expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(ofProfiles(issues)).toEqual([]);
  });

  test('no profile is unknown', () => {
    for (const file of readdirSync(folder)) {
      const codes = thorough(read(file.replace('.json', ''))).map(({ code }) => code);
      expect(codes).not.toContain('unchecked-profile');
    }
  });
});

test('documents of seeded exams conform', () => {
  const exams = [
    ...sampleExams(1, sampled(2, 6), { size: 'small' }),
    ...sampleExams(1, sampled(1, 2), { size: 'edge' }),
  ];
  for (const exam of exams) {
    const bundle = toBundleOrThrow(exam, { bundleType: 'document', profiles: true });
    const { conformance, issues } = validateBundle(bundle, { profiles });
    expect(ofProfiles(issues).filter((line) => !line.startsWith('information'))).toEqual([]);
    expect(conformance).not.toBe('does-not-conform');
  }
});

test('documents of seeded exams in R5 conform to the profiles of R5', async () => {
  const order = { version: 'R5', base: CANONICAL_BASE, packageVersion: '0.1.0' } as const;
  const ofR5 = compileProfilesR5(await packageDefinitions(order));
  const options = { profiles: ofR5, level: 'thorough', engine: thoroughR5 } as const;
  expect(ofR5.byUrl.size).toBe(profiles.byUrl.size);
  for (const exam of sampleExams(1, sampled(1, 3), { size: 'small' })) {
    const asDocument = { bundleType: 'document', profiles: true, fhirVersion: 'R5' } as const;
    const bundle = toBundleOrThrow(exam, asDocument);
    expect(JSON.stringify(bundle)).toContain('/face-neck-document"');
    const { valid, issues } = validateR5(bundle, options);
    expect(ofProfiles(issues)).toEqual([]);
    expect(valid).toBe(true);
  }
});

type Path = readonly (string | number)[];

/** What the profiles say, in profiles/fsh. */
const breaks: readonly [name: string, path: Path, value: unknown, ...told: string[]][] = [
  ['face-neck-finding', ['category'], undefined, 'error missing-property category'],
  ['face-neck-finding', ['bodySite'], undefined, 'error missing-property bodySite'],
  [
    'face-neck-finding',
    ['valueCodeableConcept'],
    undefined,
    'error broken-invariant ',
    'error broken-invariant ',
    'error missing-property value',
  ],
  ['face-neck-observation', ['subject'], undefined, 'error missing-property subject'],
  [
    'face-neck-measurement',
    ['valueQuantity', 'code'],
    undefined,
    'error missing-property valueQuantity.code',
  ],
  [
    'face-neck-region-group',
    ['hasMember'],
    undefined,
    'error broken-invariant ',
    'error missing-property hasMember',
  ],
  ['face-neck-region-state', ['bodySite'], undefined, 'error missing-property bodySite'],
  ['face-neck-region-state', ['interpretation'], undefined, 'error broken-invariant '],
  ['face-neck-report', ['result'], undefined, 'error missing-property result'],
  [
    'face-neck-sensation',
    ['component'],
    undefined,
    'error broken-invariant ',
    'error missing-property component',
    'error missing-property component',
  ],
  ['face-neck-sensation-comparison', ['code'], { text: 'Compared' }, 'error invalid-value code'],
  [
    'face-neck-sensation-comparison',
    ['valueCodeableConcept'],
    { text: 'Less on the right' },
    'error missing-property valueCodeableConcept',
  ],
  ['face-neck-symptom', ['category'], undefined, 'error missing-property category'],
  [
    'face-neck-test',
    ['valueCodeableConcept'],
    undefined,
    'error broken-invariant ',
    'error broken-invariant ',
  ],
  [
    'face-neck-composition',
    ['section', 0, 'code'],
    undefined,
    'error missing-property section.0.code',
  ],
  ['face-neck-composition', ['section', 0, 'entry'], undefined, 'error broken-invariant section.0'],
];

describe('what is broken in an example is found', () => {
  test.each(breaks)('%s with %j as %j', (name, path, value, ...told) => {
    const found = thorough(changed(read(name), path, value));
    expect(lines(found).filter((line) => line.startsWith('error'))).toEqual(told);
  });

  test('a document without its report', () => {
    const [exam] = sampleExams(1, 1, { size: 'small' });
    const bundle = exam && toBundleOrThrow(exam, { bundleType: 'document', profiles: true });
    const entry = bundle?.entry?.filter(
      ({ resource }) => resource?.resourceType !== 'DiagnosticReport',
    );
    const found = ofProfiles(validateBundle({ ...bundle, entry }, { profiles }).issues);
    expect(found.filter((line) => line.startsWith('error'))).toEqual([
      'error missing-property entry',
    ]);
  });
});

test('a rule of a profile is held without an engine', () => {
  const state = read('face-neck-region-state');
  const rules = (resource: unknown) =>
    validateBundle(resource, { profiles })
      .issues.filter(({ code }) => code === 'broken-invariant' || code === 'unchecked-rule')
      .map(({ rule }) => rule?.replace(/^.*#/, ''));
  expect(rules(state)).toEqual([]);
  const system = 'http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation';
  const abnormal = {
    ...(state as object), // the example is an object
    interpretation: [{ coding: [{ system, code: 'A' }] }],
    valueCodeableConcept: {
      coding: [{ system: `${CANONICAL_BASE}/CodeSystem/values`, code: 'state.normal' }],
      text: 'normal',
    },
  };
  expect(rules(abnormal)).toContain('fn-rst-1');
});
