import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { Ajv, type AnySchemaObject } from 'ajv';
import standalone from 'ajv/dist/standalone/index.js';
import { transform } from 'esbuild';
import { withSharedLists, withWords } from './validator-schema.ts';

const project = fileURLToPath(new URL('../../../', import.meta.url));

interface Target {
  readonly schema: string;
  /** Folder and name below the output folder. */
  readonly folder: string;
  readonly name: string;
  readonly validator: string;
  /** Definition to check by; the schema as a whole where left out. */
  readonly root?: string;
  /** Properties of the whole that their own validators check; here they are an object. */
  readonly elsewhere?: readonly string[];
}

const targets: readonly Target[] = [
  {
    schema: 'profiles/exam.schema.json',
    folder: 'model/compiled',
    name: 'exam',
    validator: 'examValidator',
  },
  {
    schema: 'profiles/catalogue.schema.json',
    folder: 'terminology/compiled',
    name: 'additions',
    validator: 'additionsValidator',
  },
  {
    schema: 'profiles/check-settings.schema.json',
    folder: 'checks/compiled',
    name: 'settings',
    validator: 'settingsValidator',
  },
  {
    schema: 'profiles/mapping.schema.json',
    folder: 'convert/compiled',
    name: 'mapping',
    validator: 'mappingValidator',
    // What is checked is the mapping with its preset below it.
    root: 'Mapping',
  },
  {
    schema: 'profiles/clinic.schema.json',
    folder: 'clinic/compiled',
    name: 'clinic',
    validator: 'clinicValidator',
    elsewhere: ['catalogue', 'checks'],
  },
  {
    schema: 'profiles/mapping.schema.json',
    folder: 'convert/compiled',
    name: 'fhir-mapping',
    validator: 'fhirMappingValidator',
    root: 'FhirMapping',
  },
];

/**
 * The validator of a schema as an ES module that imports nothing and needs no eval, so that it works
 * under a strict content security policy.
 */
export async function validatorModule(text: string, name: string): Promise<string> {
  const schema: AnySchemaObject = withWords(withSharedLists(JSON.parse(text)));
  const ajv = new Ajv({
    allErrors: true,
    verbose: true,
    messages: false,
    inlineRefs: false,
    discriminator: true,
    allowUnionTypes: true,
    strict: true,
    strictTuples: false,
    strictTypes: false,
    strictRequired: false,
    // Lengths are in UTF-16 units: counting code points would import a part of ajv at run time.
    unicode: false,
    // It would only say that `unicode` is deprecated; what matters is thrown by strict mode.
    logger: false,
    code: { source: true, esm: true, lines: false },
  });
  ajv.addVocabulary(['x-missing', 'x-tags']);
  const code = linearErrors(standalone.default(ajv, ajv.compile(schema)))
    .replace('"use strict";', '')
    .replace(/export const validate = (\w+);export default \w+;/, `export const ${name} = $1;`);
  const resourceTypes: unknown = JSON.parse(text)['x-resource-types'];
  const names = resourceTypes
    ? `export const resourceTypes = ${JSON.stringify(resourceTypes)};`
    : '';
  const { code: small } = await transform(code + names, {
    format: 'esm',
    minify: true,
    treeShaking: true,
    target: 'es2022',
  });
  if (/\brequire\(|\bimport\b/.test(small)) throw new Error('the validator imports something');
  if (!small.includes(` as ${name}`)) throw new Error(`the validator does not export ${name}`);
  return small;
}

/** Errors kept of one call: with them a call lists all that it may, and hostile input stays cheap. */
const mostSchemaErrors = 10_000;

/**
 * ajv joins the errors of parts by `concat`, which copies all errors so far each time: quadratic for
 * a bundle with a fault in every entry. Pushing them is linear.
 */
function linearErrors(code: string): string {
  const joined = code.replace(
    /vErrors = vErrors === null \? ([\w.]+)\.errors : vErrors\.concat\(\1\.errors\);/g,
    'vErrors = joinErrors(vErrors, $1.errors);',
  );
  if (joined.includes('.concat(')) throw new Error('ajv joins errors in a way not known here');
  const bounded = joined.replaceAll(/vErrors\.push\(/g, 'addError(vErrors, ');
  return `${bounded}
function addError(all, error) {
  if (all.length < ${mostSchemaErrors}) all.push(error);
}
function joinErrors(all, more) {
  if (all === null) return more;
  for (const error of more) addError(all, error);
  return all;
}`;
}

/** The schema for values of one of its definitions, without those that this one does not need. */
function rootedAt(root: string, text: string): string {
  const { anyOf: _, ...schema } = JSON.parse(text);
  const definitions: { [name: string]: unknown } = {};
  const waiting = [root];
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    if (Object.hasOwn(definitions, name)) continue;
    definitions[name] = schema.definitions[name];
    const named = JSON.stringify(definitions[name]).matchAll(/"#\/definitions\/(\w+)"/g);
    for (const [, other = ''] of named) waiting.push(other);
  }
  return JSON.stringify({ ...schema, $ref: `#/definitions/${root}`, definitions });
}

/** The schema with some properties of its root as objects that hold anything. */
function withObjects(names: readonly string[], text: string): string {
  const schema = JSON.parse(text);
  const { properties } = schema.definitions[schema.$ref.replace('#/definitions/', '')];
  for (const name of names) properties[name] = { type: 'object' };
  return JSON.stringify(schema);
}

function declarations(name: string, resourceTypes: boolean): string {
  return `interface SchemaFault {
  instancePath: string;
  schemaPath: string;
  keyword: string;
  params: Record<string, unknown>;
  schema?: unknown;
  parentSchema?: Record<string, unknown>;
  data?: unknown;
}
export declare const ${name}: {
  (data: unknown): boolean;
  errors?: SchemaFault[] | null;
};
${resourceTypes ? 'export declare const resourceTypes: readonly string[];\n' : ''}`;
}

/** A file that says the same already is left alone: another program may be reading it. */
async function writeChanged(file: string, text: string): Promise<void> {
  const before = await readFile(file, 'utf8').catch(() => undefined);
  if (before !== text) await writeFile(file, text);
}

/** Writes the compiled validators and their types below `out`, normally src or dist. */
export async function compileValidators(out: string): Promise<void> {
  for (const { schema, folder, name, validator, root, elsewhere = [] } of targets) {
    const file = await readFile(join(project, schema), 'utf8');
    const whole = root === undefined ? file : rootedAt(root, file);
    const text = elsewhere.length === 0 ? whole : withObjects(elsewhere, whole);
    const home = join(out, folder);
    await mkdir(home, { recursive: true });
    await writeChanged(join(home, `${name}.js`), await validatorModule(text, validator));
    await writeChanged(
      join(home, `${name}.d.ts`),
      declarations(validator, validator === 'resourceValidator'),
    );
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { values } = parseArgs({ options: { out: { type: 'string', default: 'src' } } });
  await compileValidators(join(project, values.out));
}
