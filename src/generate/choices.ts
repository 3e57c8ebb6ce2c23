import { writeFile } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { correct } from './fhir-schema/corrections.ts';
import { compareWithDefinitions } from './fhir-schema/elements.ts';
import { prune } from './fhir-schema/prune.ts';
import { readPublished, versionSources } from './fhir-schema/sources.ts';

const target = fileURLToPath(new URL('../validate/tables/choices.ts', import.meta.url));

/**
 * The choice elements of all FHIR versions and their types, as TypeScript: `valueQuantity` in JSON is
 * `value` with the type Quantity in FHIRPath. Some ordinary elements have such a name, too.
 */
export async function choicesText(): Promise<string> {
  const choices = new Map<string, Set<string>>();
  const plain = new Set<string>();
  for (const source of versionSources) {
    const published = await readPublished(source);
    const definitions = prune(published.schema);
    await correct(definitions, published);
    const { elements } = await compareWithDefinitions(definitions, published);
    for (const { element, properties } of elements) {
      const name = element.path.slice(element.path.lastIndexOf('.') + 1);
      if (!name.endsWith('[x]')) plain.add(element.path.split('.').slice(-2).join('.'));
      else for (const { type } of properties) add(choices, name.slice(0, -3), type ?? '');
    }
  }
  const rows = [...choices].sort(([one], [other]) => (one < other ? -1 : 1));
  const names = new Set(
    rows.flatMap(([base, types]) =>
      [...types].map((type) => base + type[0]?.toUpperCase() + type.slice(1)),
    ),
  );
  const ordinary = [...plain]
    .filter((path) => names.has(path.slice(path.indexOf('.') + 1)))
    .map((path) => path.replace(/^[A-Z]\w*\./, ''))
    .sort();
  const packages = versionSources.map(({ definitions: { name, version } }) => `${name}@${version}`);
  return [
    '/**',
    ' * Elements whose JSON name ends in their type, and the types, over all FHIR versions.',
    ` * Made by src/generate/choices.ts from ${packages.join(', ')} (CC0-1.0).`,
    ' */',
    'export const choiceElements: Readonly<Record<string, readonly string[]>> = {',
    ...rows.map(([base, types]) => `  ${base}: ${list([...types].sort())},`),
    '};',
    '',
    '/** Ordinary elements with such a name, some only below the element named first. */',
    `export const plainElements: readonly string[] = ${list(ordinary)};`,
    '',
  ].join('\n');
}

function add(choices: Map<string, Set<string>>, base: string, type: string): void {
  choices.set(base, (choices.get(base) ?? new Set()).add(type));
}

function list(types: readonly string[]): string {
  return `[${types.map((type) => `'${type}'`).join(', ')}]`;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await writeFile(target, await choicesText());
}
