import type { TableName } from '../../terminology/built-in.ts';
import { kebab, readLanguages, tableNames } from '../terminology/languages.ts';
import { readTables } from '../terminology/terminology.ts';
import { codeSystem, issueCodeSystem } from './code-systems.ts';
import { conceptMaps } from './concept-maps.ts';
import { packageConcepts } from './concepts.ts';
import { exampleBundles } from './examples.ts';
import { type Definition, type PackageOrder, PUBLISHER, RELEASED } from './head.ts';
import { namingSystems } from './naming-systems.ts';
import { profiles } from './profiles.ts';
import { valueSets } from './value-sets.ts';

/** Every definition of a package: from the tables, and the profiles that are there. */
export async function packageDefinitions(order: PackageOrder): Promise<Definition[]> {
  const [tables, languages] = [await readTables(), await readLanguages()];
  const made = tableNames().flatMap((table: TableName) => {
    const file = tables[kebab(table)];
    if (file === undefined) throw new Error(`no file of the table ${table}`);
    const concepts = packageConcepts(table, tables, languages);
    return [
      codeSystem(order, table, file, concepts),
      ...valueSets(order, table, file, concepts),
      ...conceptMaps(order, table, file, concepts),
    ];
  });
  return [...made, issueCodeSystem(order), ...namingSystems(order), ...(await profiles(order))];
}

/**
 * The files of a package in HL7's format, by their place in the archive.
 * @see https://confluence.hl7.org/display/FHIR/NPM+Package+Specification
 */
export async function packageFiles(order: PackageOrder): Promise<Map<string, string>> {
  const definitions = await packageDefinitions(order);
  const files = new Map<string, string>();
  files.set('package/package.json', print(manifest(order)));
  files.set('package/.index.json', print(index(definitions)));
  for (const one of definitions) files.set(`package/${fileName(one)}`, print(one));
  for (const [name, text] of await exampleBundles(order)) {
    files.set(`package/example/${name}`, text);
  }
  return files;
}

export function fileName({ resourceType, id }: Definition): string {
  return `${resourceType}-${id}.json`;
}

/** Other packages that a package builds on, in the edition of its FHIR version. */
const dependencies = {
  R4: {
    'hl7.fhir.r4.core': '4.0.1',
    'hl7.terminology.r4': '7.0.1',
    'hl7.fhir.uv.extensions.r4': '5.3.0-ballot-tc1',
  },
  R5: {
    'hl7.fhir.r5.core': '5.0.0',
    'hl7.terminology.r5': '7.0.1',
    'hl7.fhir.uv.extensions.r5': '5.3.0-ballot-tc1',
  },
} as const;

function manifest({ version, base, packageVersion }: PackageOrder): object {
  return {
    name: `face-neck-fhir.${version.toLowerCase()}`,
    version: packageVersion,
    'tools-version': 3,
    type: 'fhir.ig',
    date: RELEASED.replaceAll('-', ''),
    license: 'Apache-2.0',
    canonical: base,
    url: base,
    title: `Face and neck examinations, FHIR ${version}`,
    description:
      'Code systems, value sets, concept maps and profiles of face and neck examinations',
    fhirVersions: [version === 'R4' ? '4.0.1' : '5.0.0'],
    dependencies: dependencies[version],
    author: PUBLISHER,
    directories: { lib: 'package', example: 'example' },
  };
}

function index(definitions: readonly Definition[]): object {
  const properties = ['url', 'version', 'kind', 'type', 'supplements', 'content'];
  return {
    'index-version': 2,
    files: definitions.map((one) => ({
      filename: fileName(one),
      resourceType: one.resourceType,
      id: one.id,
      ...Object.fromEntries(
        properties.filter((name) => one[name] !== undefined).map((name) => [name, one[name]]),
      ),
    })),
  };
}

function print(value: object): string {
  return `${JSON.stringify(value, null, 1)}\n`;
}
