import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { CANONICAL_BASE } from '../../terminology/canonical-base.ts';
import type { Definition, PackageOrder } from './head.ts';

const folder = fileURLToPath(new URL('../../../profiles/', import.meta.url));

/** Types that stand in /profiles as finished resources; the rest of a package is made from the tables. */
const types: readonly unknown[] = ['StructureDefinition', 'ValueSet', 'ImplementationGuide'];

/** The finished profiles of a FHIR version, with our base put in place of the default one. */
export async function profiles({ version, base }: PackageOrder): Promise<Definition[]> {
  const fhirVersion = version === 'R4' ? '4.0.1' : '5.0.0';
  const texts = await Promise.all((await jsonFiles(folder)).map((file) => readFile(file, 'utf8')));
  return texts
    .map((text): Definition => JSON.parse(text.replaceAll(CANONICAL_BASE, base)))
    .filter(({ resourceType }) => types.includes(resourceType))
    .filter(({ fhirVersion: made = fhirVersion }) => [made].flat().includes(fhirVersion));
}

async function jsonFiles(at: string): Promise<string[]> {
  const entries = await readdir(at, { withFileTypes: true });
  const found = entries
    .filter(({ name }) => name !== 'node_modules' && !name.startsWith('.'))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .map(async (entry) => {
      if (entry.isDirectory()) return jsonFiles(join(at, entry.name));
      return entry.name.endsWith('.json') ? [join(at, entry.name)] : [];
    });
  return (await Promise.all(found)).flat();
}
