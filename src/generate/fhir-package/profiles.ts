import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { CANONICAL_BASE } from '../../terminology/canonical-base.ts';
import type { Definition, PackageOrder } from './head.ts';

const folder = fileURLToPath(new URL('../../../profiles/structure-definitions/', import.meta.url));

/** The compiled profiles of a FHIR version, with our base put in place of the default one. */
export async function profiles({ version, base }: PackageOrder): Promise<Definition[]> {
  const own = join(folder, version.toLowerCase());
  const files = (await readdir(own)).sort();
  const texts = await Promise.all(files.map((file) => readFile(join(own, file), 'utf8')));
  return texts.map((text): Definition => JSON.parse(text.replaceAll(CANONICAL_BASE, base)));
}
