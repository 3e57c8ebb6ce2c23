import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ExportOptions } from '../../src/export/options.ts';
import { toBundle } from '../../src/export/to-bundle.ts';
import { toJson } from '../../src/fhir/json/to-json.ts';
import { exampleBundles } from '../../src/generate/fhir-package/examples.ts';
import type { Definition } from '../../src/generate/fhir-package/head.ts';
import { packageDefinitions, packageFiles } from '../../src/generate/fhir-package/package-files.ts';
import { CANONICAL_BASE } from '../../src/terminology/canonical-base.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';
import {
  type FhirRelease,
  type ReferenceResult,
  startValidator,
  type Validator,
} from './corpus.ts';
import { extensionsPack } from './definitions.ts';

const BUNDLES = 300;
const HOUR = 3_600_000;
const lateralities = ['extension', 'body-structure', 'text'] as const;
const sizes = ['small', 'usual', 'edge'] as const;

const folders: string[] = [];
const definitions: Record<'R4' | 'R5', readonly Definition[]> = { R4: [], R5: [] };
let validator: Validator;

/** The definitions of a package in a folder of their own, as the validator loads them. */
async function writePackage(version: 'R4' | 'R5'): Promise<string> {
  const order = { version, base: CANONICAL_BASE, packageVersion: '1.0.0' } as const;
  const guide = (await packageFiles(order)).get('package/ImplementationGuide-guide.json') ?? '';
  definitions[version] = [...(await packageDefinitions(order)), JSON.parse(guide)];
  const folder = await mkdtemp(join(tmpdir(), 'fhir-package-'));
  folders.push(folder);
  for (const one of definitions[version]) {
    await writeFile(join(folder, `${one.resourceType}-${one.id}.json`), JSON.stringify(one));
  }
  return folder;
}

beforeAll(async () => {
  const [r4, r5] = [await writePackage('R4'), await writePackage('R5')];
  validator = await startValidator({
    anyCoding: true,
    load: [
      ...(await extensionsPack()),
      { version: 'R4', folder: r4 },
      { version: 'R4B', folder: r4 },
      { version: 'R5', folder: r5 },
    ],
  });
});

afterAll(async () => {
  await validator.stop();
  for (const folder of folders) await rm(folder, { recursive: true, force: true });
});

function errors({ id, issues }: ReferenceResult): string[] {
  return issues
    .filter(({ severity }) => severity === 'error' || severity === 'fatal')
    .map(({ location, message }) => `${id} ${location} ${message}`);
}

/** Errors in seeded bundles of all types, sizes and ways to say the side. */
async function wrongBundles(
  count: number,
  version: FhirRelease,
  more: ExportOptions,
): Promise<string[]> {
  const wrong: string[] = [];
  for (let seed = 0; seed < count; seed++) {
    const size = sizes[seed % 10 === 0 ? 1 : Math.floor(seed / 6) % 2 === 0 ? 0 : 2] ?? 'small';
    const exam = sampleExam(seed, { size });
    const options = {
      fhirVersion: version,
      bundleType: seed % 2 === 0 ? 'collection' : 'document',
      laterality: lateralities[Math.floor(seed / 2) % 3] ?? 'extension',
      ...more,
    } as const;
    const bundle = toBundle(exam, options).value;
    if (bundle === undefined) throw new Error(`seed ${seed} gave no bundle`);
    const id = `${seed} ${size} ${JSON.stringify(options)}`;
    wrong.push(...errors(await validator.validate({ id, version, text: toJson(bundle) })));
  }
  return wrong;
}

describe('the package in the reference validator', () => {
  test.each(['R4', 'R5'] as const)(
    'every definition for %s is valid',
    async (version) => {
      const inputs = definitions[version].map((resource) => ({
        id: `${resource.resourceType}/${resource.id}`,
        version,
        resource,
      }));
      expect(inputs.length).toBeGreaterThan(100);
      const results = await Promise.all(inputs.map((input) => validator.validate(input)));
      expect(results.flatMap(errors)).toEqual([]);
    },
    HOUR,
  );

  test.each(['R4', 'R5'] as const)(
    'every example of the package for %s is valid against the profiles that it claims',
    async (version) => {
      const order = { version, base: CANONICAL_BASE, packageVersion: '1.0.0' };
      const examples = [...(await exampleBundles(order))];
      expect(examples.length).toBeGreaterThan(10);
      const results = await Promise.all(
        examples.map(([id, text]) => validator.validate({ id, version, text })),
      );
      expect(results.flatMap(errors)).toEqual([]);
      for (const [, text] of examples) {
        expect(text).toContain(`"profile":["${CANONICAL_BASE}/`);
      }
    },
    HOUR,
  );

  test.each([
    ['R4', BUNDLES],
    ['R5', 60],
  ] as const)(
    'seeded bundles of %s have no errors against the profiles that they claim',
    async (version, count) => {
      expect(await wrongBundles(count, version, { profiles: true })).toEqual([]);
    },
    HOUR,
  );

  test(
    'seeded bundles of R4B have no errors with it',
    async () => {
      expect(await wrongBundles(30, 'R4B', {})).toEqual([]);
    },
    HOUR,
  );

  test('displays in German are known to it as designations', async () => {
    const bundle = toBundle(sampleExam(2, { size: 'small' }), { language: german }).value;
    const text = toJson(bundle ?? {});
    expect(errors(await validator.validate({ id: 'german', version: 'R4', text }))).toEqual([]);
  });

  test('a code that our systems do not hold, and a wrong display, are errors', async () => {
    const text = toJson(toBundle(sampleExam(2, { size: 'small' })).value ?? {});
    const changed = [
      text.replaceAll('/CodeSystem/items","code":"exam"', '/CodeSystem/items","code":"exams"'),
      text.replaceAll('"display":"Examination of face and neck"', '"display":"Sinus"'),
    ];
    for (const [at, one] of changed.entries()) {
      expect(one).not.toBe(text);
      const result = await validator.validate({ id: `changed ${at}`, version: 'R4', text: one });
      expect(errors(result).length, `change ${at}`).toBeGreaterThan(0);
    }
  });
});
