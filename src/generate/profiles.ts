import { spawn } from 'node:child_process';
import { cp, link, mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { published } from './published.ts';

/**
 * Compiles profiles/fsh with SUSHI for R4 and for R5 and writes what it gives to a folder of each in
 * profiles/structure-definitions. The published definitions are laid out as the compiler expects
 * them in its home folder, so that it asks nobody for them. Needs the packages of profiles/package.json.
 * Run: npm run profiles
 */
const project = fileURLToPath(new URL('../../', import.meta.url));
const sources = join(project, 'profiles', 'fsh');
const target = join(project, 'profiles', 'structure-definitions');
const work = join(project, 'output', 'profiles');

/** The package that holds the definitions of a version on npm, and what the compiler wants it to be called. */
const definitions = {
  R4: { name: 'hl7.fhir.r4.examples', version: '4.0.1', as: 'hl7.fhir.r4.core' },
  R5: { name: 'hl7.fhir.r5.core', version: '5.0.0', as: 'hl7.fhir.r5.core' },
} as const;

export type ProfiledVersion = keyof typeof definitions;

/** Texts of the compiled definitions by file name. @throws Error with what the compiler wrote */
export async function compiledProfiles(version: ProfiledVersion): Promise<Map<string, string>> {
  const folder = join(work, version.toLowerCase());
  await rm(folder, { recursive: true, force: true });
  await mkdir(join(folder, 'input'), { recursive: true });
  const config = await readFile(join(sources, 'sushi-config.yaml'), 'utf8');
  const { version: edition } = definitions[version];
  await writeFile(
    join(folder, 'sushi-config.yaml'),
    config.replace(/^fhirVersion: .*$/m, `fhirVersion: ${edition}`),
  );
  // What differs between the versions stands in a folder of each.
  const others = Object.keys(definitions).filter((other) => other !== version);
  await cp(sources, join(folder, 'input', 'fsh'), {
    recursive: true,
    filter: (from) => !others.some((other) => from === join(sources, other.toLowerCase())),
  });
  await layOut(version, join(folder, 'home'));
  await compile(folder);
  const made = join(folder, 'fsh-generated', 'resources');
  const files = (await readdir(made)).filter((name) => /^(?:Struct|ValueSet)/.test(name)).sort();
  const texts = await Promise.all(files.map((name) => readFile(join(made, name), 'utf8')));
  // Made by the compiler in this run.
  return new Map(files.map((name, at) => [name, compactText(JSON.parse(texts[at] ?? ''))]));
}

async function layOut(release: ProfiledVersion, home: string): Promise<void> {
  const { name, version, as } = definitions[release];
  const files = await published(name, version);
  const folder = join(home, '.fhir', 'packages', `${as}#${version}`, 'package');
  await mkdir(folder, { recursive: true });
  for (const file of await readdir(files)) {
    // The compiler passes over symbolic links.
    if (/^(?:StructureDefinition|ValueSet|CodeSystem)-.*\.json$/.test(file)) {
      await link(join(files, file), join(folder, file));
    }
  }
  const manifest = JSON.parse(await readFile(join(files, 'package.json'), 'utf8'));
  const edited = { ...manifest, name: as, type: 'fhir.core' };
  await writeFile(join(folder, 'package.json'), JSON.stringify(edited));
}

function compile(folder: string): Promise<void> {
  const sushi = join(project, 'profiles', 'node_modules', 'fsh-sushi', 'dist', 'app.js');
  const home = join(folder, 'home');
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [sushi, 'build', '--snapshot', folder], {
      // Without a registry it uses what is laid out, and not what is newest somewhere.
      env: { ...process.env, HOME: home, USERPROFILE: home, FPL_REGISTRY: 'http://none.invalid' },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    const output: string[] = [];
    child.stdout.on('data', (chunk: Buffer) => output.push(chunk.toString('utf8')));
    child.stderr.on('data', (chunk: Buffer) => output.push(chunk.toString('utf8')));
    child.on('error', reject);
    child.on('close', (code) => {
      if (code === 0) return resolve();
      reject(new Error(`the compiler of the profiles ended with ${code}:\n${output.join('')}`));
    });
  });
}

interface Definition {
  readonly resourceType: string;
  readonly snapshot?: { readonly element: readonly Readonly<Record<string, unknown>>[] };
  readonly [name: string]: unknown;
}

/** Of a snapshot: remarks on the base elements, which stand in HL7's own definitions, and XPath. */
const remarks: ReadonlySet<string> = new Set([
  ...['alias', 'comment', 'example', 'mapping', 'requirements', 'xpath'],
]);

/** JSON with a line for each property, and in lists of elements for each element. */
function compactText({ snapshot, mapping: _, ...definition }: Definition): string {
  const lean = snapshot && {
    element: snapshot.element.map(withoutRemarks),
  };
  const lines = Object.entries({ ...definition, ...(lean && { snapshot: lean }) }).map(
    ([name, value]) => ` ${JSON.stringify(name)}: ${elementLines(value)}`,
  );
  return `{\n${lines.join(',\n')}\n}\n`;
}

function withoutRemarks(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutRemarks);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([name]) => !remarks.has(name))
      .map(([name, member]) => [name, withoutRemarks(member)]),
  );
}

function elementLines(value: unknown): string {
  const holder: { readonly element?: unknown } = typeof value === 'object' ? (value ?? {}) : {};
  if (!Array.isArray(holder.element)) return JSON.stringify(value);
  const lines = holder.element.map((element) => `  ${JSON.stringify(element)}`);
  return `{"element": [\n${lines.join(',\n')}\n ]}`;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await rm(target, { recursive: true, force: true });
  for (const version of ['R4', 'R5'] as const) {
    const folder = join(target, version.toLowerCase());
    const files = await compiledProfiles(version);
    await mkdir(folder, { recursive: true });
    for (const [name, text] of files) await writeFile(join(folder, name), text);
    console.info(`${files.size} definitions of ${version} in profiles/structure-definitions`);
  }
}
