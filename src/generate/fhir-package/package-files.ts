import type { TableName } from '../../terminology/built-in.ts';
import { kebab } from '../../terminology/named-table.ts';
import { readLanguages, tableNames } from '../terminology/languages.ts';
import { readTables } from '../terminology/terminology.ts';
import { capabilityStatements } from './capability-statements.ts';
import { codeSystem, issueCodeSystem } from './code-systems.ts';
import { conceptMaps } from './concept-maps.ts';
import { packageConcepts } from './concepts.ts';
import { exampleBundles } from './examples.ts';
import type { Definition, PackageOrder } from './head.ts';
import { type Example, implementationGuide } from './implementation-guide.ts';
import { index, manifest } from './manifest.ts';
import { namingSystems } from './naming-systems.ts';
import { profiles } from './profiles.ts';
import { searchParameters } from './search-parameters.ts';
import { regionSets, valueSets } from './value-sets.ts';

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
  return [
    ...made,
    ...regionSets(order, tables),
    issueCodeSystem(order),
    ...namingSystems(order),
    ...(await profiles(order)),
    ...searchParameters(order),
    ...capabilityStatements(order),
  ];
}

/**
 * The files of a package in HL7's format, by their place in the archive.
 * @see https://confluence.hl7.org/display/FHIR/NPM+Package+Specification
 */
export async function packageFiles(order: PackageOrder): Promise<Map<string, string>> {
  const examples = await exampleBundles(order);
  const made = await packageDefinitions(order);
  const guide = implementationGuide(order, made, [...examples].map(exampleOf));
  const definitions = [guide, ...made];
  const files = new Map<string, string>();
  files.set('package/package.json', print(manifest(order)));
  files.set('package/.index.json', print(index(definitions, fileName)));
  for (const one of definitions) files.set(`package/${fileName(one)}`, print(one));
  for (const [name, text] of examples) files.set(`package/example/${name}`, text);
  return files;
}

function exampleOf([file, text]: readonly [string, string]): Example {
  // A bundle that this package wrote.
  const { resourceType, id } = JSON.parse(text) as { resourceType: string; id: string };
  const name = file.replace(/^Bundle-(.*)\.json$/, '$1').replaceAll('-', ' ');
  return { resourceType, id, name };
}

export function fileName({ resourceType, id }: Definition): string {
  return `${resourceType}-${id}.json`;
}

function print(value: object): string {
  return `${JSON.stringify(value, null, 1)}\n`;
}
