import type {
  CapabilityStatement,
  CodeSystem,
  CodeSystemConcept,
  SearchParameter,
} from 'fhir/r4.js';
import fhirpath from 'fhirpath';
import { describe, expect, test } from 'vitest';
import type { Definition } from '../../src/generate/fhir-package/head.ts';
import { packageDefinitions } from '../../src/generate/fhir-package/package-files.ts';
import { toBundleOrThrow } from '../../src/index.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';

// What the packages hold besides codes and profiles. HL7's validator looks at every definition in
// tests/reference/package.test.ts, ours in tests/slow/package-definitions.test.ts, and a real server
// answers in tests/reference/package-on-server.test.ts.

const base = 'https://face-neck-fhir.example/fhir';
const made = (version: 'R4' | 'R5'): Promise<Definition[]> =>
  packageDefinitions({ version, base, packageVersion: '0.1.0' });
const definitions = { R4: await made('R4'), R5: await made('R5') };
const edge = sampleExam(4, { size: 'edge' });
const exams = [edge, sampleExam(4, { size: 'small' })];

function read<T>(version: 'R4' | 'R5', type: string, id: string): T {
  const found = definitions[version].find((one) => one.resourceType === type && one.id === id);
  if (found === undefined) throw new Error(`the package has no ${type} ${id}`);
  return found as unknown as T; // the callers name the type that the package made
}

describe.each(['R4', 'R5'] as const)('the package for %s', (version) => {
  test('asks of a server every type of resource that an export gives, and its own searches', () => {
    const { rest = [] } = read<CapabilityStatement>(version, 'CapabilityStatement', 'exam-server');
    const named = new Set((rest[0]?.resource ?? []).map(({ type }) => String(type)));
    const given = new Set<string>();
    for (const exam of exams) {
      for (const options of [
        { laterality: 'extension', bundleType: 'document' },
        { laterality: 'body-structure' },
      ] as const) {
        const { entry = [] } = toBundleOrThrow(exam, { fhirVersion: version, ...options });
        for (const { resource } of entry) given.add(String(resource?.resourceType));
      }
    }
    expect(given.size).toBeGreaterThan(11);
    expect([...given].filter((type) => !named.has(type))).toEqual([]);
    const searches = (rest[0]?.resource ?? []).flatMap(({ searchParam = [] }) => searchParam);
    const own = searches.flatMap(({ definition }) => definition ?? []);
    const defined = definitions[version].filter((one) => one.resourceType === 'SearchParameter');
    expect(own.sort()).toEqual(defined.map(({ url }) => url).sort());
  });
});

describe('the hierarchy of regions', () => {
  const system = read<CodeSystem>('R4', 'CodeSystem', 'regions');
  const above = new Map<string, string[]>();
  const walk = (concepts: readonly CodeSystemConcept[], path: readonly string[]): void => {
    for (const { code, concept = [] } of concepts) {
      above.set(code, [...path]);
      walk(concept, [...path, code]);
    }
  };
  walk(system.concept ?? [], []);

  test.each([
    ['lid-upper.left', ['face-neck', 'eyes', 'lid-upper']],
    ['thyroid-lobe', ['face-neck', 'neck', 'thyroid']],
    ['face-neck', []],
  ])('%s', (code, expected) => {
    expect(above.get(code)).toEqual(expected);
    expect(system).toMatchObject({ hierarchyMeaning: 'is-a', count: above.size });
  });

  test('a side of a part is a part of that side of the whole', () => {
    const text = JSON.stringify(system);
    const at = text.indexOf('"code":"lid-upper.left"');
    expect(text.slice(at, text.indexOf('"concept"', at))).toContain('"valueCode":"eyes.left"');
  });
});

test.each(['body-site', 'side'])('the search %s finds observations of an example', (code) => {
  const { expression = '' } = read<SearchParameter>('R4', 'SearchParameter', `observation-${code}`);
  const observations = (toBundleOrThrow(edge).entry ?? []).flatMap(({ resource }) =>
    resource?.resourceType === 'Observation' ? [resource] : [],
  );
  // Without a model a choice has its name in JSON.
  const plain = expression.replace(/\.value$/, '.valueCodeableConcept');
  const found = observations.flatMap((one) => fhirpath.evaluate(one, plain) as unknown[]); // no async functions
  expect(found.length).toBeGreaterThan(10);
  expect(JSON.stringify(found)).toContain(code === 'side' ? '7771000' : 'CodeSystem/regions');
});
