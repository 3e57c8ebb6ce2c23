import { mkdir, writeFile } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { CANONICAL_BASE } from '../../fhir/names/systems.ts';
import { correct } from '../fhir-schema/corrections.ts';
import { prune } from '../fhir-schema/prune.ts';
import { readPublished, type VersionSource, versionSources } from '../fhir-schema/sources.ts';

const folder = fileURLToPath(new URL('../../../profiles/json-schema/', import.meta.url));

/** HL7's JSON schema of one FHIR version, pruned and corrected, as the text of the committed file. */
export async function schemaText(source: VersionSource): Promise<string> {
  const published = await readPublished(source);
  const definitions = prune(published.schema);
  const corrections = await correct(definitions, published);
  const { name, version, file, licence } = source.schema;
  const head = {
    $schema: 'http://json-schema.org/draft-07/schema#',
    $id: `${CANONICAL_BASE}/json-schema/${fileName(source)}`,
    title: `FHIR ${source.fhirVersion} (${source.number}), the resources that this library writes and meets`,
    'x-source': {
      package: name,
      version,
      file,
      licence,
      definitions: source.definitions,
      expansions: source.expansions,
      changes:
        'Pruned to some resources; descriptions left out; draft-06 with id made draft-07 with $id; corrected as listed.',
    },
    'x-corrections': corrections,
    'x-resource-types': published.resourceTypes,
    $ref: '#/definitions/ResourceList',
  };
  const lines = Object.entries(head).map(
    ([key, value]) =>
      `${key === '$schema' ? '' : ' '}${JSON.stringify(key)}: ${JSON.stringify(value)},`,
  );
  // One definition a line: small, and a change shows in a diff.
  const body = Object.entries(definitions)
    .sort()
    .map(([key, value]) => `  ${JSON.stringify(key)}: ${JSON.stringify(value)}`);
  return `{\n ${lines.join('\n')}\n "definitions": {\n${body.join(',\n')}\n }\n}\n`;
}

export function fileName({ fhirVersion }: Pick<VersionSource, 'fhirVersion'>): string {
  return `fhir-${fhirVersion.toLowerCase()}.json`;
}

/** Writes profiles/json-schema. */
export async function writeSchemas(): Promise<void> {
  await mkdir(folder, { recursive: true });
  for (const source of versionSources) {
    await writeFile(folder + fileName(source), await schemaText(source));
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await writeSchemas();
