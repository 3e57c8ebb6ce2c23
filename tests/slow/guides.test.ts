import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { published } from '../../src/generate/published.ts';
import { thoroughR4 } from '../../src/validate/thorough/thorough.ts';
import { compileProfiles, type Profiles, validateBundle } from '../../src/validate/versions/r4.ts';

// Guides that HL7 published hold profiles, and examples that their authors say conform to them.

interface Guide {
  readonly name: string;
  readonly version: string;
  readonly least: number;
  /** Examples with an error, and what it is. */
  readonly wrong: Readonly<Record<string, readonly string[]>>;
}

const guides: readonly Guide[] = [
  { name: 'hl7.fhir.uv.ips', version: '2.0.0', least: 40, wrong: {} },
  {
    name: 'hl7.fhir.us.mcode',
    version: '4.0.0',
    least: 170,
    // `m^2` is not a code of UCUM, which writes square metres `m2`: https://ucum.org/ucum#section-Exponents
    wrong: { 'Observation-body-surface-area-example.json': ['unknown-unit valueQuantity.code'] },
  },
];

async function profilesIn(folder: string): Promise<Profiles> {
  const files = (await readdir(folder)).filter((file) =>
    /^(?:StructureDefinition|ValueSet|CodeSystem)-.*\.json$/.test(file),
  );
  return compileProfiles(await Promise.all(files.map((file) => readJson(join(folder, file)))));
}

async function readJson(file: string): Promise<unknown> {
  return JSON.parse(await readFile(file, 'utf8'));
}

test.each(guides)('examples of $name conform to its own profiles', async (guide) => {
  const { name, version, least, wrong } = guide;
  const folder = await published(name, version);
  const profiles = await profilesIn(folder);
  expect(profiles.issues).toEqual([]);
  const files = await readdir(join(folder, 'example'));
  const found: Record<string, string[]> = {};
  const codes = new Map<string, number>();
  for (const file of files.filter((each) => each.endsWith('.json')).sort()) {
    const resource = await readJson(join(folder, 'example', file));
    const { conformance, issues } = validateBundle(resource, {
      profiles,
      level: 'thorough',
      engine: thoroughR4,
    });
    for (const { code } of issues) codes.set(code, (codes.get(code) ?? 0) + 1);
    // A guide rests on others that are not given here, so that some of it stays unchecked.
    if (conformance !== 'does-not-conform') continue;
    const errors = issues.filter(({ severity }) => severity === 'error');
    found[file] = errors.map(({ code, path }) => `${code} ${path.join('.')}`);
  }
  console.info(`${name}: ${files.length} examples, ${profiles.byUrl.size} profiles`, codes);
  expect(found).toEqual(wrong);
  expect(files.length).toBeGreaterThan(least);
});
