import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { codeSystemUrl } from '../../src/fhir/names/code-systems.ts';
import { profileNames, profileUrl } from '../../src/fhir/names/profile-names.ts';
import { CANONICAL_BASE } from '../../src/fhir/names/systems.ts';
import { packageDefinitions } from '../../src/generate/fhir-package/package-files.ts';
import { profileExamples } from '../../src/generate/profile-examples.ts';
import { toBundleOrThrow, toJson } from '../../src/index.ts';
import { fromBundle } from '../../src/read/from-bundle.ts';
import type { TableName } from '../../src/terminology/built-in.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { exportedCodes } from '../../src/terminology/exported-codes.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import { sampled } from '../sampled.ts';

const folder = new URL('../../profiles/', import.meta.url);

function files(of: string): string[] {
  return readdirSync(new URL(of, folder)).sort();
}

function read(file: string): string {
  return readFileSync(new URL(file, folder), 'utf8');
}

const fsh = files('fsh')
  .filter((name) => name.endsWith('.fsh'))
  .map((name) => read(`fsh/${name}`))
  .join('\n');

function codesOf(table: TableName): string[] {
  return exportedCodes(builtInCatalogue, table).map(({ code }) => code);
}

describe('sources of the profiles', () => {
  it('name only codes that the tables have', () => {
    const named = [...fsh.matchAll(/\$items#([a-z-]+)/g)].map(([, code]) => code ?? '');
    expect(named.length).toBeGreaterThan(4);
    expect(named.filter((code) => !codesOf('items').includes(code))).toEqual([]);
    const answers = [...fsh.matchAll(/'((?:presence|state)\.[a-z-]+)'/g)].map(
      ([, code]) => code ?? '',
    );
    expect(answers.length).toBeGreaterThan(8);
    expect(answers.filter((code) => !codesOf('values').includes(code))).toEqual([]);
    expect(fsh).toContain(`system = '${codeSystemUrl(CANONICAL_BASE, 'values')}'`);
  });

  it('name only value sets and code systems that the package has', async () => {
    const order = { version: 'R4', base: CANONICAL_BASE, packageVersion: '0.1.0' } as const;
    const urls = new Set((await packageDefinitions(order)).map(({ url }) => url));
    const named = [...fsh.matchAll(/https:\S+\/(?:ValueSet|CodeSystem)\/[a-z-]+/g)].map(
      ([url]) => url,
    );
    expect(named.length).toBeGreaterThan(10);
    expect(named.filter((url) => !urls.has(url))).toEqual([]);
  });
});

describe('compiled profiles', () => {
  it.each([
    ['r4', '4.0.1'],
    ['r5', '5.0.0'],
  ])('of %s are those that an export can claim, each with its snapshot', (version, edition) => {
    const folder = `structure-definitions/${version}`;
    const compiled = files(folder).filter((name) => name.startsWith('Structure'));
    const urls = compiled.map((name) => {
      const found = JSON.parse(read(`${folder}/${name}`));
      expect(found.fhirVersion).toBe(edition);
      expect(found.snapshot.element.length).toBeGreaterThan(found.differential.element.length);
      return found.url;
    });
    expect(urls.sort()).toEqual(
      profileNames.map((name) => profileUrl(CANONICAL_BASE, name)).sort(),
    );
  });

  it('have examples, which are what the example exams give', async () => {
    const made = await profileExamples();
    expect(files('examples')).toEqual([...made.keys()].sort());
    for (const [name, text] of made) expect(read(`examples/${name}`)).toBe(text);
    // A document is an example of the package.
    const missing = profileNames.filter((name) => !made.has(`${name}.json`));
    expect(missing).toEqual(['face-neck-document']);
  });
});

describe('claims of profiles', () => {
  const exams = [...sampleExams(1, sampled(2, 4), { size: 'edge' })];

  it('change nothing else in an export', () => {
    for (const exam of exams) {
      const claimed = toJson(toBundleOrThrow(exam, { bundleType: 'document', profiles: true }));
      const without = claimed.replace(/"meta":\{"profile":\["[^"]*"\]\},/g, '');
      expect(without).not.toBe(claimed);
      expect(without).toBe(toJson(toBundleOrThrow(exam, { bundleType: 'document' })));
    }
  });

  it.each(['R4', 'R5'] as const)(
    'are made of every report, observation and composition in %s',
    (fhirVersion) => {
      for (const exam of exams) {
        const options = { fhirVersion, bundleType: 'document', profiles: true } as const;
        const bundle = toBundleOrThrow(exam, options);
        const resources = (bundle.entry ?? []).map(({ resource }) => resource);
        const types = /^(?:Observation|DiagnosticReport|Composition)$/;
        const unclaimed = resources.filter(
          (one) => types.test(one?.resourceType ?? '') && one?.meta?.profile?.length !== 1,
        );
        expect(unclaimed).toEqual([]);
      }
    },
  );

  it('are not made in R4B, for which there are none', () => {
    for (const exam of exams) {
      const r4b = toJson(toBundleOrThrow(exam, { fhirVersion: 'R4B', profiles: true }));
      expect(r4b).not.toContain('"profile"');
    }
  });

  it('follow the canonical base', () => {
    const [exam] = exams;
    const canonicalBase = 'https://clinic.example/fhir';
    const bundle = toBundleOrThrow(exam ?? expect.fail(), { profiles: true, canonicalBase });
    expect(bundle.entry?.[0]?.resource?.meta?.profile).toEqual([
      'https://clinic.example/fhir/StructureDefinition/face-neck-report',
    ]);
  });

  it('are passed over when the exam is read back', () => {
    for (const exam of exams) {
      for (const bundleType of ['collection', 'document'] as const) {
        const plain = fromBundle(toBundleOrThrow(exam, { bundleType }));
        const claimed = fromBundle(toBundleOrThrow(exam, { bundleType, profiles: true }));
        expect(claimed).toEqual(plain);
      }
    }
  });
});
