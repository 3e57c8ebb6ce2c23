import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { heldResources } from '../../src/generate/fhir-schema/prune.ts';
import type { FhirRelease } from './corpus.ts';
import { publishedExamples } from './definitions.ts';

/** A published example of a resource type that this library writes or meets, or a bundle of them. */
export interface PublishedExample {
  readonly file: string;
  readonly version: FhirRelease;
  readonly text: string;
}

const held: ReadonlySet<unknown> = new Set(heldResources);

/**
 * Every published example of the held resources in a version, by file name. Of the bundles
 * those that hold one of them or no resource at all; the others are collections of definitions and of
 * other types, up to 42 MB.
 */
export async function publishedCorpus(version: FhirRelease): Promise<PublishedExample[]> {
  const folder = await publishedExamples(version);
  const files = readdirSync(folder).filter(
    (file) => file.endsWith('.json') && held.has(file.split('-')[0]),
  );
  return files.sort().flatMap((file) => {
    const text = readFileSync(join(folder, file), 'utf8').replace(/^\uFEFF/, '');
    return file.startsWith('Bundle-') && !holdsOurs(text) ? [] : [{ file, version, text }];
  });
}

function holdsOurs(text: string): boolean {
  // A published bundle, which the validators read more carefully.
  const { entry = [] } = JSON.parse(text) as { entry?: { resource?: { resourceType: string } }[] };
  const types = entry.flatMap(({ resource }) => resource?.resourceType ?? []);
  return types.length === 0 || types.some((type) => held.has(type));
}
