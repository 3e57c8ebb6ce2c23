import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
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
  return Object.entries<string | { default: string; types: string }>(exports).map(
    ([path, target]) => ({
      name: name + path.slice(1),
      file: typeof target === 'string' ? undefined : target.default,
      types: typeof target === 'string' ? undefined : target.types,
    }),
  );
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
