import { execFileSync } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CodeableConcept, Coding, ImplementationGuide, Observation } from 'fhir/r4.js';
import { describe, expect, test } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { toBundle } from '../../src/export/to-bundle.ts';
import { licenceIssues } from '../../src/fhir/licence/licence-gate.ts';
import type { Definition, PackageOrder } from '../../src/generate/fhir-package/head.ts';
import { packageFiles } from '../../src/generate/fhir-package/package-files.ts';
import { tarball } from '../../src/generate/fhir-package/tar.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { freeSet } from '../../src/terminology/published/free-set.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';

const base = 'https://face-neck-fhir.example/fhir';
const order = (version: 'R4' | 'R5'): PackageOrder => ({ version, base, packageVersion: '0.1.0' });
const packages = { R4: await packageFiles(order('R4')), R5: await packageFiles(order('R5')) };

interface Concept {
  readonly code: string;
  readonly display?: string;
  readonly designation?: readonly { readonly language: string; readonly value: string }[];
  readonly concept?: readonly Concept[];
}

function withBelow(concepts: readonly Concept[]): Concept[] {
  return concepts.flatMap((one) => [one, ...withBelow(one.concept ?? [])]);
}

function definitions(files: ReadonlyMap<string, string>, type: string): Definition[] {
  return [...files]
    .filter(([name]) => name.startsWith(`package/${type}-`))
    .map(([, text]) => JSON.parse(text));
}

const systems = new Map(
  definitions(packages.R4, 'CodeSystem').map((one) => [
    one.url as string,
    new Map(withBelow(one.concept as Concept[]).map((concept) => [concept.code, concept])),
  ]),
);

describe.each(['R4', 'R5'] as const)('the package for %s', (version) => {
  const files = packages[version];

  test('says what it is, as the NPM package specification of HL7 asks', () => {
    const manifest = JSON.parse(files.get('package/package.json') ?? '');
    expect(manifest).toMatchObject({
      name: `face-neck-fhir.${version.toLowerCase()}`,
      version: '0.1.0',
      canonical: base,
      fhirVersions: [version === 'R4' ? '4.0.1' : '5.0.0'],
      license: 'Apache-2.0',
      author: expect.any(String),
    });
    const core = version === 'R4' ? 'hl7.fhir.r4.core' : 'hl7.fhir.r5.core';
    expect(Object.keys(manifest.dependencies)).toContain(core);
  });

  test('its index lists every definition and nothing else', () => {
    const index = JSON.parse(files.get('package/.index.json') ?? '');
    expect(index['index-version']).toBe(2);
    const listed = index.files.map(({ filename }: { filename: string }) => `package/${filename}`);
    const there = [...files.keys()].filter((name) => /^package\/[A-Z][^/]*$/.test(name));
    expect([...listed].sort()).toEqual(there.sort());
    const { resourceType, id } = JSON.parse(files.get(listed[0]) ?? '');
    expect(index.files[0]).toMatchObject({ resourceType, id });
  });

  test('it has a guide that names every definition and example once', () => {
    const [guide] = definitions(files, 'ImplementationGuide');
    // As the package wrote it.
    const { resource, grouping } = (guide as unknown as ImplementationGuide).definition ?? {};
    const there = [...files]
      .filter(([name]) => /\/[A-Z]\w+-[^/]*$/.test(name) && !name.includes('/ImplementationGuide-'))
      .map(([, text]): Definition => JSON.parse(text))
      .map(({ resourceType, id }) => `${resourceType}/${id}`);
    const listed = (resource ?? []).map(({ reference }) => reference.reference);
    expect(listed.sort()).toEqual(there.sort());
    const groups = new Set((grouping ?? []).map(({ id }) => id));
    expect((resource ?? []).filter(({ groupingId }) => !groups.has(groupingId))).toEqual([]);
  });

  test('no two definitions have one URL, name or id, and every value set has its codes', () => {
    const all = ['CodeSystem', 'ValueSet', 'ConceptMap'].flatMap((type) =>
      definitions(files, type).map(({ url, name }) => ({ url, key: `${type} ${name}` })),
    );
    expect(new Set(all.map(({ url }) => url)).size).toBe(all.length);
    expect(new Set(all.map(({ key }) => key)).size).toBe(all.length);
    for (const set of definitions(files, 'ValueSet')) {
      const { include } = set.compose as { include: { system?: string; concept?: Concept[] }[] };
      for (const { system = '', concept = [] } of include) {
        const known = systems.get(system);
        if (!system.startsWith(base)) continue;
        expect(known, `${set.id}: ${system}`).toBeDefined();
        expect(concept.filter(({ code }) => !known?.has(code))).toEqual([]);
      }
    }
  });

  test('none of its files names a concept outside the free set', () => {
    const found = [...files].flatMap(([path, text]) =>
      path.endsWith('.json')
        ? licenceIssues(JSON.parse(text), 'free-set', { freeSet }).map((one) => [path, one.path])
        : [],
    );
    expect(found).toEqual([]);
  });

  test('it maps to the free set alone, and each relation that is not equivalence says so', () => {
    const maps = definitions(files, 'ConceptMap');
    expect(maps.length).toBeGreaterThan(5);
    for (const map of maps) {
      expect(licenceIssues(map, 'free-set', { freeSet }), map.id).toEqual([]);
    }
    const targets = maps.flatMap(({ group }) =>
      (group as { element: { target?: Record<string, string>[] }[] }[]).flatMap(({ element }) =>
        element.flatMap(({ target = [] }) => target),
      ),
    );
    const word = version === 'R4' ? 'equivalence' : 'relationship';
    const other = targets.filter((one) => one.code && one[word] !== 'equivalent');
    expect(other.length).toBeGreaterThan(100);
    expect(other.filter(({ comment }) => comment === undefined)).toEqual([]);
  });

  test('it carries the notices of SNOMED CT and LOINC where it has their codes', () => {
    for (const map of definitions(files, 'ConceptMap')) {
      const notice = map.id.endsWith('snomed') ? 'College of American Pathologists' : 'Regenstrief';
      expect(map.copyright, map.id).toContain(notice);
    }
  });

  test('it has the examples', () => {
    const examples = [...files.keys()].filter((name) => name.startsWith('package/example/'));
    expect(examples.length).toBeGreaterThan(5);
  });
});

describe('the code systems', () => {
  const bundles = Array.from({ length: 60 }, (_, seed) => {
    const size = seed === 0 ? 'full' : seed % 2 === 0 ? 'edge' : 'usual';
    const laterality = (['extension', 'body-structure'] as const)[seed % 2] ?? 'extension';
    const bundleType = (['document', 'collection'] as const)[seed % 2] ?? 'document';
    return toBundle(sampleExam(seed, { size }), { laterality, bundleType }).value;
  });

  test('hold every code of ours that an export gives, with its display', () => {
    const wrong = new Set<string>();
    let count = 0;
    JSON.stringify(bundles, (_, value) => {
      const known = systems.get(value?.system);
      if (typeof value?.system === 'string' && value.system.startsWith(base) && value.code) {
        const concept = known?.get(value.code);
        count += 1;
        if (concept?.display !== value.display) wrong.add(`${value.system}|${value.code}`);
      }
      return value;
    });
    expect([...wrong]).toEqual([]);
    expect(count).toBeGreaterThan(10_000);
  });

  test('have a German designation for every concept, the one that an export in German gives', () => {
    for (const [url, concepts] of systems) {
      if (url.endsWith('/issue-code')) continue;
      const without = [...concepts.values()].filter(
        ({ designation }) => designation?.some(({ language }) => language === 'de') !== true,
      );
      expect(
        without.map(({ code }) => code),
        url,
      ).toEqual([]);
    }
    const wrong: string[] = [];
    const bundle = toBundle(sampleExam(0, { size: 'full' }), { language: german }).value;
    JSON.stringify(bundle, (_, value) => {
      const concept = systems.get(value?.system)?.get(value?.code);
      const word = concept?.designation?.find(({ language }) => language === 'de')?.value;
      if (concept !== undefined && word !== value.display) wrong.push(value.code);
      return value;
    });
    expect(wrong).toEqual([]);
  });

  test('are below another base where one is given', async () => {
    const other = 'https://clinic.example/fhir';
    const files = await packageFiles({ version: 'R4', base: other, packageVersion: '0.1.0' });
    expect([...files].filter(([, text]) => text.includes(base)).map(([name]) => name)).toEqual([]);
  });
});

describe('the archive', () => {
  test('has the same bytes each time, and tar reads it', async () => {
    const archive = tarball(packages.R4);
    expect(tarball(packages.R4).equals(archive)).toBe(true);
    const folder = await mkdtemp(join(tmpdir(), 'fhir-package-'));
    try {
      await writeFile(join(folder, 'a.tgz'), archive);
      execFileSync('tar', ['-xzf', 'a.tgz'], { cwd: folder });
      for (const name of ['package/package.json', 'package/.index.json']) {
        expect(await readFile(join(folder, name), 'utf8')).toBe(packages.R4.get(name));
      }
      const listed = execFileSync('tar', ['-tzf', 'a.tgz'], { cwd: folder, encoding: 'utf8' });
      expect(listed.trim().split('\n')).toEqual([...packages.R4.keys()]);
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  });

  test('a name that ustar cannot hold is refused', () => {
    expect(() => tarball(new Map([[`package/${'a'.repeat(100)}.json`, '{}']]))).toThrow(RangeError);
  });
});

describe('required bindings of the package', () => {
  type Binding = { readonly path: string; readonly valueSet: string };
  const bindings = new Map<string, Binding[]>(
    definitions(packages.R4, 'StructureDefinition').map(({ url, differential }) => {
      const { element } = differential as {
        element: { path: string; binding?: { strength: string; valueSet: string } }[];
      };
      const required = element.flatMap(({ path, binding }) =>
        binding?.strength === 'required' && binding.valueSet.startsWith(base)
          ? [{ path, valueSet: binding.valueSet }]
          : [],
      );
      return [String(url), required] as const;
    }),
  );
  const sets = new Map(
    definitions(packages.R4, 'ValueSet').map(({ url, compose }) => [
      String(url),
      (compose as { include: { system: string; concept?: Concept[] }[] }).include,
    ]),
  );

  const holds = (valueSet: string, coding: Coding): boolean =>
    (sets.get(valueSet) ?? []).some(
      ({ system, concept }) =>
        system === coding.system &&
        (concept === undefined || concept.some(({ code }) => code === coding.code)),
    );

  const conceptAt = (one: Observation, path: string): CodeableConcept | undefined => {
    if (path === 'Observation.value[x]') return one.valueCodeableConcept;
    return path === 'Observation.dataAbsentReason' ? one.dataAbsentReason : undefined;
  };

  /** Codings of an observation under a required binding, each with the set that is bound. */
  const boundCodings = (one: Observation): readonly (readonly [string, Coding])[] =>
    (bindings.get(one.meta?.profile?.[0] ?? '') ?? []).flatMap(({ path, valueSet }) =>
      (conceptAt(one, path)?.coding ?? []).map((coding) => [valueSet, coding] as const),
    );

  // A server may ask that every coding is in the set: HAPI FHIR does by default (hapi-fhir #8345).
  test('hold every coding that an export writes, and not only ours', () => {
    const exams = [...examples.values(), sampleExam(3, { size: 'edge' })];
    const codings = exams.flatMap((exam) =>
      (toBundle(exam, { profiles: true }).value?.entry ?? []).flatMap(
        ({ resource }) =>
          resource?.resourceType === 'Observation' ? boundCodings(resource as Observation) : [], // of R4
      ),
    );
    const strange = codings.filter(([valueSet, coding]) => !holds(valueSet, coding));
    expect(strange.slice(0, 5)).toEqual([]);
    expect(codings.length).toBeGreaterThan(1000);
  });
});
