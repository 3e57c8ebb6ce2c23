/**
 * Writes src/validate/tables: what HL7's definitions say about the held types, by FHIR version; and
 * the modifier elements that the reader must understand.
 * Run: npx tsx src/generate/fhir-tables/write.ts
 */
import { writeFile } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { FhirVersion } from '../../fhir/version.ts';
import type {
  CodeSystemTable,
  CodeTable,
  ExtensionTable,
  PrimitiveTable,
  TypeTable,
  ValueSetTable,
} from '../../validate/elements/table-types.ts';
import { primitiveCorrections } from '../fhir-schema/primitive-corrections.ts';
import { pruned } from '../fhir-schema/prune.ts';
import { readPublished, type VersionSource, versionSources } from '../fhir-schema/sources.ts';
import { isPrimitiveName } from '../fhir-schema/types.ts';
import { codeTables } from './codes.ts';
import { type Definitions, readDefinitions } from './definitions.ts';
import { allTypes, heldTypes, typeTable } from './elements.ts';
import { publishedRules, publishedTable } from './expressions.ts';
import { extensionTable } from './extensions.ts';
import { modifierTableText } from './modifiers.ts';
import { ucumText } from './ucum.ts';
import { vitalSignTables } from './vital-signs.ts';

const project = new URL('../../../', import.meta.url);
const ISO_3166 = 'urn:iso:std:iso:3166';
const folder = new URL('src/validate/tables/', project);

/**
 * Texts of the generated files, by name. What the small entries hold stands in `r4.ts`; `r4-rest.ts`
 * has what the entries of all types hold besides.
 */
export async function tableFiles(): Promise<Map<string, string>> {
  const files = new Map<string, string>();
  const terminology: Record<string, CodeTable> = {};
  const terminologyRest: Record<string, CodeTable> = {};
  for (const source of versionSources) {
    const version = source.fhirVersion;
    const definitions = await readDefinitions(version);
    const name = version.toLowerCase();
    const held = heldTypes(definitions);
    const all = allTypes(definitions);
    const small = tablesOf(definitions, held);
    const rest = tablesOf(definitions, all, held);
    addSystems(terminology, small.terminology);
    addSystems(terminologyRest, beyond(rest.terminology, small.terminology));
    addSystems(terminologyRest, countries(definitions));
    const primitives = await primitiveTable(source);
    files.set(
      `${name}.ts`,
      [
        head(`Types, extensions and codes of FHIR ${version}.`, definitions),
        importOf(...tableNames, 'PrimitiveTable'),
        `export const resourceTypes: readonly string[] = ${JSON.stringify(resourceNames(definitions))};\n`,
        table('primitives', 'PrimitiveTable', primitives),
        ...tablesText(small),
      ].join('\n'),
    );
    files.set(
      `${name}-rest.ts`,
      [
        head(`What ${name}.ts lacks of all types of FHIR ${version}.`, definitions),
        importOf(...tableNames, 'PublishedTable'),
        table('published', 'PublishedTable', publishedTable(definitions, all)),
        ...tablesText({
          types: beyond(rest.types, small.types),
          extensions: beyond(rest.extensions, small.extensions),
          own: beyond(rest.own, small.own),
          valueSets: beyond(rest.valueSets, small.valueSets),
        }),
      ].join('\n'),
    );
    files.set(`${name}-expressions.ts`, expressionsText(version, definitions, all));
    files.set(`${name}-vital-signs.ts`, vitalSignsText(version, definitions));
  }
  files.set('terminology.ts', terminologyText(terminology));
  files.set('terminology-rest.ts', terminologyText(beyond(terminologyRest, terminology)));
  files.set('ucum.ts', await ucumText());
  return files;
}

const tableNames = ['CodeSystemTable', 'ExtensionTable', 'TypeTable', 'ValueSetTable'] as const;

interface VersionTables {
  readonly types: TypeTable;
  readonly extensions: ExtensionTable;
  readonly own: CodeSystemTable;
  readonly valueSets: ValueSetTable;
}

function tablesOf(
  definitions: Definitions,
  names: readonly string[],
  held: readonly string[] = names,
): VersionTables & { readonly terminology: CodeSystemTable } {
  const types = typeTable(definitions, names, held);
  const extensions = extensionTable(definitions, names);
  return { types, extensions, ...codeTables(definitions, types, extensions) };
}

function tablesText({ types, extensions, own, valueSets }: VersionTables): string[] {
  return [
    table('types', 'TypeTable', types),
    table('extensions', 'ExtensionTable', extensions),
    table('codeSystems', 'CodeSystemTable', own),
    table('valueSets', 'ValueSetTable', valueSets),
  ];
}

/** The rows that another table lacks, or has in another form. */
function beyond<T>(
  rows: Readonly<Record<string, T>>,
  others: Readonly<Record<string, T>>,
): Record<string, T> {
  return Object.fromEntries(
    Object.entries(rows).filter(
      ([key, row]) => JSON.stringify(row) !== JSON.stringify(others[key]),
    ),
  );
}

/** Names of all resources of the version. */
function resourceNames({ structures }: Definitions): string[] {
  return [...structures.values()]
    .filter(({ derivation, kind }) => derivation === 'specialization' && kind === 'resource')
    .filter(({ abstract }) => !abstract)
    .map(({ type }) => type)
    .sort();
}

/** Forms of the primitive types, from HL7's JSON schema with our corrections. */
async function primitiveTable(source: VersionSource): Promise<PrimitiveTable> {
  const { schema } = await readPublished(source);
  const names = Object.keys(schema).filter(isPrimitiveName);
  const found = Object.fromEntries(names.map((name) => [name, pruned(schema, name)]));
  for (const { run } of primitiveCorrections) run(found);
  // The corrected nodes have the members of a row and no others.
  return found as PrimitiveTable;
}

/** Codes of ISO 3166 as an expansion of HL7 lists them, without displays, which it has in several forms. */
function countries({ expansions }: Definitions): CodeSystemTable {
  const listed = expansions.get('http://hl7.org/fhir/ValueSet/jurisdiction')?.expansion?.contains;
  const codes = (listed ?? []).flatMap(({ system, code }) =>
    system === ISO_3166 && code !== undefined ? [code] : [],
  );
  if (codes.length === 0) return {};
  return { [ISO_3166]: Object.fromEntries(codes.map((code) => [code, ''])) };
}

/** A version may have left out displays that another keeps. */
function addSystems(all: Record<string, CodeTable>, more: CodeSystemTable): void {
  for (const [system, codes] of Object.entries(more)) {
    const before = all[system] ?? {};
    const merged = Object.entries(codes).map(([code, display]) => [code, before[code] || display]);
    all[system] = Object.fromEntries(merged);
  }
}

function terminologyText(terminology: CodeSystemTable): string {
  const sorted = Object.entries(terminology).sort(([one], [other]) => (one < other ? -1 : 1));
  return [
    '// Generated by src/generate/fhir-tables. Do not edit.',
    '/**',
    " * Complete code systems of HL7's terminology that bindings of the held types reach.",
    ' * From hl7.terminology.r4@7.0.1 and, for codes that it has dropped, hl7.fhir.r4.examples@4.0.1; the',
    ' * codes of countries from hl7.fhir.r5.expansions@5.0.0 (CC0-1.0).',
    ' */',
    importOf('CodeSystemTable'),
    table('terminology', 'CodeSystemTable', Object.fromEntries(sorted)),
  ].join('\n');
}

function expressionsText(
  version: FhirVersion,
  definitions: Definitions,
  held: readonly string[],
): string {
  return [
    head(`Invariants of FHIR ${version} as published, by element.`, definitions),
    "import type { ExpressionTable } from '../thorough/expressions.ts';\n",
    table('expressions', 'ExpressionTable', publishedRules(definitions, held)),
  ].join('\n');
}

function vitalSignsText(version: FhirVersion, definitions: Definitions): string {
  const { profiles, valueSets } = vitalSignTables(definitions);
  return [
    head(
      `HL7's profiles of vital signs in FHIR ${version}, and the value sets they bind.`,
      definitions,
    ),
    importOf('ValueSetTable'),
    `export const profiles: readonly object[] = [\n${profiles
      .map((profile) => `  ${JSON.stringify(profile)},`)
      .join('\n')}\n];\n`,
    table('valueSets', 'ValueSetTable', valueSets),
  ].join('\n');
}

function head(what: string, { packages }: Definitions): string {
  return [
    '// Generated by src/generate/fhir-tables. Do not edit.',
    '/**',
    ` * ${what}`,
    ` * From ${packages.join(', ')} (CC0-1.0).`,
    ' */',
  ].join('\n');
}

function importOf(...names: readonly string[]): string {
  return `import type { ${names.join(', ')} } from '../elements/table-types.ts';\n`;
}

/** One row a line, so that a change shows in a diff. */
function table(name: string, type: string, rows: object): string {
  const lines = Object.entries(rows).map(
    ([key, value]) => `  ${JSON.stringify(key)}: ${JSON.stringify(value)},`,
  );
  return `export const ${name}: ${type} = {\n${lines.join('\n')}\n};\n`;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  for (const [name, text] of await tableFiles()) {
    await writeFile(fileURLToPath(new URL(name, folder)), text);
  }
  const modifiers = new URL('src/read/foreign/tables/modifiers.ts', project);
  await writeFile(fileURLToPath(modifiers), await modifierTableText());
}
