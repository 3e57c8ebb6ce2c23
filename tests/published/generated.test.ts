import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { choicesText } from '../../src/generate/choices.ts';
import { versionSources } from '../../src/generate/fhir-schema/sources.ts';
import { published } from '../../src/generate/published.ts';
import { fileName, schemaText } from '../../src/generate/schema/schemas.ts';
import { issueTypes } from '../../src/issues/codes.ts';

const project = new URL('../../', import.meta.url);

function committed(path: string): Promise<string> {
  return readFile(new URL(path, project), 'utf8');
}

for (const source of versionSources) {
  test(`profiles/json-schema/${fileName(source)} is what the published packages give`, async () => {
    expect(await schemaText(source)).toBe(
      await committed(`profiles/json-schema/${fileName(source)}`),
    );
  });
}

test('src/validate/tables/choices.ts is what the published packages give', async () => {
  expect(await choicesText()).toBe(await committed('src/validate/tables/choices.ts'));
});

interface Concept {
  readonly code: string;
  readonly concept?: readonly Concept[];
}

function codesOf(concepts: readonly Concept[]): string[] {
  return concepts.flatMap(({ code, concept = [] }) => [code, ...codesOf(concept)]);
}

test('types of OperationOutcome issues are codes of http://hl7.org/fhir/issue-type', async () => {
  const folder = await published('hl7.fhir.r4.examples', '4.0.1');
  const file = join(folder, 'CodeSystem-issue-type.json');
  const system = JSON.parse(await readFile(file, 'utf8'));
  expect(system.url).toBe('http://hl7.org/fhir/issue-type');
  const codes = codesOf(system.concept);
  expect(Object.values(issueTypes).filter((type) => !codes.includes(type))).toEqual([]);
});
