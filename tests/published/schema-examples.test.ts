import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { heldResources } from '../../src/generate/fhir-schema/prune.ts';
import { published } from '../../src/generate/published.ts';
import { issueText } from '../../src/issue.ts';
import * as r4 from '../../src/validate/compiled/r4.js';
import * as r4b from '../../src/validate/compiled/r4b.js';
import * as r5 from '../../src/validate/compiled/r5.js';
import { schemaIssues } from '../../src/validate/schema.ts';
import knownFailures from './known-failures.json' with { type: 'json' };

const held: ReadonlySet<unknown> = new Set(heldResources);

/** Examples of the resources that the library holds a schema of; the least number guards the search. */
const suites = [
  {
    version: 'R4',
    schema: r4,
    folder: ['hl7.fhir.r4.examples', '4.0.1'],
    least: 229,
  },
  {
    version: 'R4B',
    schema: r4b,
    folder: ['hl7.fhir.r4b.examples', '4.3.0'],
    least: 237,
  },
  {
    version: 'R5',
    schema: r5,
    folder: ['hl7.fhir.r5.examples', '5.0.0'],
    least: 289,
  },
] as const;

/** Files of HL7 whose content does not conform, each with the reason. One that passes fails the suite. */
const failures: Readonly<Record<string, Readonly<Record<string, string>>>> = knownFailures;

describe.each(suites)(
  'examples published by HL7 for $version',
  ({ version, schema, folder, least }) => {
    test('conform to the schema', async () => {
      const path = await published(folder[0], folder[1]);
      const wrong: Record<string, string[]> = {};
      let seen = 0;
      for (const file of await readdir(path)) {
        if (!/^[A-Z].*\.json$/.test(file)) continue;
        const resource = JSON.parse(await readFile(join(path, file), 'utf8'));
        if (!held.has(resource.resourceType)) continue;
        seen += 1;
        const found = schemaIssues(resource, { fhirVersion: version, ...schema });
        const errors = found.filter(({ severity }) => severity === 'error');
        if (errors.length > 0) wrong[file] = errors.map(issueText);
      }
      expect(seen).toBeGreaterThanOrEqual(least);
      const known = failures[version] ?? {};
      expect(wrong, 'and every known failure still fails').toEqual(
        Object.fromEntries(Object.keys(known).map((file) => [file, expect.anything()])),
      );
    });
  },
);
