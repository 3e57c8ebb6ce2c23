import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { SchemaValidator } from '../../src/data/schema-errors.ts';
import { heldResources } from '../../src/generate/fhir-schema/prune.ts';
import { published } from '../../src/generate/published.ts';
import { validatorModule } from '../../src/generate/schema/compile-validators.ts';
import { fileName } from '../../src/generate/schema/schemas.ts';
import { issueText } from '../../src/issues/issue.ts';
import { schemaIssues } from '../../src/validate/elements/schema.ts';
import { structureValidator } from '../../src/validate/elements/structure.ts';
import { keptBases } from '../reference/bases.ts';
import { mutants } from '../reference/mutants.ts';
import { allDefinitions, resourceTypes } from '../validate/all-types.ts';
import knownFailures from './known-failures.json' with { type: 'json' };

/** Examples of all types; the least number guards the search. */
const suites = [
  { version: 'R4', folder: ['hl7.fhir.r4.examples', '4.0.1'], least: 2_000 },
  { version: 'R4B', folder: ['hl7.fhir.r4b.examples', '4.3.0'], least: 2_000 },
  { version: 'R5', folder: ['hl7.fhir.r5.examples', '5.0.0'], least: 2_000 },
] as const;

/** Files of HL7 whose content does not conform, each with the reason. One that passes fails the suite. */
const failures: Readonly<Record<string, Readonly<Record<string, string>>>> = knownFailures;
const held: ReadonlySet<unknown> = new Set(heldResources);

function structureOf(version: (typeof suites)[number]['version']) {
  const names = resourceTypes(version);
  const resourceValidator = structureValidator(allDefinitions(version), names);
  return { fhirVersion: version, resourceTypes: names, resourceValidator };
}

/** HL7's own JSON schema, corrected where it departs from the StructureDefinitions, compiled by ajv. */
async function schemaOf(version: (typeof suites)[number]['version']): Promise<SchemaValidator> {
  const name = fileName({ fhirVersion: version });
  const file = new URL(`../../profiles/json-schema/${name}`, import.meta.url);
  const module = await validatorModule(await readFile(file, 'utf8'), 'resourceValidator');
  return (await import(`data:text/javascript,${encodeURIComponent(module)}`)).resourceValidator;
}

describe.each(suites)('structure of $version', ({ version, folder, least }) => {
  test('examples published by HL7 conform, of every type', async () => {
    const path = await published(folder[0], folder[1]);
    const structure = structureOf(version);
    const wrong: Record<string, string[]> = {};
    let seen = 0;
    for (const file of await readdir(path)) {
      if (!/^[A-Z].*\.json$/.test(file)) continue;
      const resource = JSON.parse(
        (await readFile(join(path, file), 'utf8')).replace(/^\uFEFF/, ''),
      );
      seen += 1;
      const errors = schemaIssues(resource, structure).filter(
        ({ severity }) => severity === 'error',
      );
      if (errors.length > 0) wrong[file] = errors.slice(0, 3).map(issueText);
    }
    expect(seen).toBeGreaterThanOrEqual(least);
    const known = failures[version] ?? {};
    expect(wrong, 'and every known failure still fails').toEqual(
      Object.fromEntries(Object.keys(known).map((file) => [file, expect.anything()])),
    );
  });

  test('is that of the JSON schema, on every tenth mutant', async () => {
    const structure = structureOf(version);
    const schema = { ...structure, resourceValidator: await schemaOf(version) };
    const places = (found: ReturnType<typeof schemaIssues>): string[] =>
      found.map(({ code, path, severity }) => `${severity} ${code} ${path.join('.')}`).sort();
    let compared = 0;
    for (const { text, fault } of [...mutants(keptBases(), version)].filter(
      (_, at) => at % 10 === 0,
    )) {
      const value = parsed(text);
      if (value === undefined || !holdsOnlyHeld(value)) continue;
      compared += 1;
      expect(places(schemaIssues(value, structure)), fault).toEqual(
        places(schemaIssues(value, schema)),
      );
    }
    expect(compared).toBeGreaterThan(100);
  });
});

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** The JSON schema is that of the resources which the library writes and meets. */
function holdsOnlyHeld(bundle: unknown): boolean {
  const text = JSON.stringify(bundle);
  return [...text.matchAll(/"resourceType":"([A-Za-z]+)"/g)].every(([, type]) => held.has(type));
}
