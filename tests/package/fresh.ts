import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export const root: string = join(import.meta.dirname, '../..');
export const fresh: string = join(root, 'output/package');

interface Entry {
  /** As it is imported: `face-neck-fhir/report`. */
  readonly name: string;
  /** The JavaScript file, relative to the package; none for JSON. */
  readonly file: string | undefined;
  readonly types: string | undefined;
}

function readEntries(): Entry[] {
  const { name, exports } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  return Object.entries<string | { default: string; types: string }>(exports)
    .flatMap(named)
    .map(([path, target]) => ({
      name: name + path.slice(1),
      file: typeof target === 'string' ? undefined : target.default,
      types: typeof target === 'string' ? undefined : target.types,
    }));
}

/** An entry that stands for every file of a folder, as each of its JSON files. */
function named<Target>([path, target]: [string, Target]): [string, Target | string][] {
  if (typeof target !== 'string' || !path.endsWith('/*')) return [[path, target]];
  const folder = target.slice(0, -1);
  const files = readdirSync(join(root, folder)).filter((file) => file.endsWith('.json'));
  return files.map((file) => [path.slice(0, -1) + file, folder + file]);
}

/** Every entry that package.json exports. */
export const entries: readonly Entry[] = readEntries();
export const codeEntries: readonly { name: string; file: string; types: string }[] =
  entries.flatMap(({ name, file, types }) =>
    file === undefined || types === undefined ? [] : [{ name, file, types }],
  );

/** Entries that read files; all others load in a browser. */
export const nodeOnly: ReadonlySet<string> = new Set(['face-neck-fhir/convert/bulk']);

/** Output of a program; where it fails, what it said is part of the error. */
export function run(program: string, args: readonly string[], cwd: string): string {
  try {
    return execFileSync(program, args, { cwd, encoding: 'utf8', stdio: 'pipe' });
  } catch (error) {
    const said = error instanceof Error && 'stdout' in error ? String(error.stdout) : '';
    throw new Error(`${program} failed: ${said}`, { cause: error });
  }
}

export const tsc: string = join(root, 'node_modules/typescript/bin/tsc');
