import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { published } from '../../../src/generate/published.ts';
import { isObject, type JsonObject, listOf, textOf } from '../../../src/validate/walk/json.ts';

/** A guide that HL7 or a national body published as a package: its profiles, and examples of them. */
export interface Guide {
  readonly name: string;
  readonly version: string;
}

export const guides: readonly Guide[] = [
  { name: 'hl7.fhir.uv.ips', version: '2.0.0' },
  { name: 'hl7.fhir.us.mcode', version: '4.0.0' },
  { name: 'hl7.fhir.us.vitals', version: '1.0.0' },
  { name: 'hl7.fhir.au.base', version: '6.0.0' },
  { name: 'hl7.fhir.uv.genomics-reporting', version: '3.0.0' },
  { name: 'hl7.fhir.uv.sdc', version: '4.0.0-ballot' },
  { name: 'hl7.fhir.us.identity-matching', version: '2.0.0' },
  { name: 'hl7.fhir.uv.order-catalog', version: '0.1.0' },
];

export interface Example {
  readonly file: string;
  readonly resource: JsonObject;
}

export interface GuideFiles {
  readonly folder: string;
  readonly definitions: readonly JsonObject[];
  readonly examples: readonly Example[];
}

/** The definitions of a guide, and those examples that claim a profile of it. */
export async function readGuide({ name, version }: Guide): Promise<GuideFiles> {
  const folder = await published(name, version);
  const definitions = objectsIn(folder)
    .filter(({ file }) => /^(?:StructureDefinition|ValueSet|CodeSystem)-/.test(file))
    .map(({ resource }) => resource);
  const own = new Set(definitions.map(({ url }) => url));
  const examples = objectsIn(join(folder, 'example')).filter(({ resource }) =>
    claimsOf(resource).some((url) => own.has(url)),
  );
  return { folder, definitions, examples };
}

function objectsIn(folder: string): Example[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .sort()
    .flatMap((file) => {
      const resource: unknown = JSON.parse(readFileSync(join(folder, file), 'utf8'));
      return isObject(resource) ? [{ file, resource }] : [];
    });
}

/** Profiles that a resource says it fits, without versions. */
export function claimsOf(resource: JsonObject): string[] {
  const meta = isObject(resource['meta']) ? resource['meta'] : {};
  return listOf(meta['profile']).flatMap((url) => textOf(url)?.split('|')[0] ?? []);
}
