import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';

const project = resolve(import.meta.dirname, '../..');

/** The copy in which the recipes are carried out. */
export const scratch: string = join(project, 'output', 'recipes');

/**
 * What of the project is copied: all that is in git or would be, with its packages linked. A second
 * root configuration of the linter would stop it in the project itself.
 */
export function makeScratch(): void {
  rmSync(scratch, { recursive: true, force: true });
  for (const file of projectFiles()) {
    mkdirSync(dirname(join(scratch, file)), { recursive: true });
    cpSync(join(project, file), join(scratch, file));
  }
  symlinkSync(join(project, 'node_modules'), join(scratch, 'node_modules'));
}

function projectFiles(): string[] {
  const listed = spawnSync(
    'git',
    ['ls-files', '--cached', '--others', '--exclude-standard', '-z'],
    {
      cwd: project,
      encoding: 'utf8',
      maxBuffer: 2 ** 26,
    },
  );
  const deleted = spawnSync('git', ['ls-files', '--deleted', '-z'], {
    cwd: project,
    encoding: 'utf8',
  });
  const gone = new Set(deleted.stdout.split('\0'));
  return listed.stdout
    .split('\0')
    .filter((file) => file !== '' && file !== 'biome.json' && !gone.has(file));
}

/** Digest of every file of the copy that git would hold. */
export function digests(): ReadonlyMap<string, string> {
  return new Map(
    projectFiles().map((file) => [
      file,
      createHash('sha256')
        .update(readFileSync(join(scratch, file)))
        .digest('hex'),
    ]),
  );
}

/** What a program in the copy said, and its exit code. */
export function run(
  program: string,
  ...given: string[]
): { readonly code: number | null; readonly said: string } {
  const { status, stdout, stderr } = spawnSync(program, given, {
    cwd: scratch,
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
  });
  return { code: status, said: `${stdout}${stderr}` };
}

export function readScratch(file: string): string {
  return readFileSync(join(scratch, file), 'utf8');
}

export function write(file: string, text: string): void {
  mkdirSync(dirname(join(scratch, file)), { recursive: true });
  writeFileSync(join(scratch, file), text);
}

/** Puts `text` before the one place where `anchor` stands. A recipe whose place has moved is a fault. */
export function insert(file: string, anchor: string, text: string): void {
  const before = readScratch(file);
  const parts = before.split(anchor);
  if (parts.length !== 2) {
    throw new Error(`${file}: ${JSON.stringify(anchor)} stands ${parts.length - 1} times`);
  }
  write(file, parts.join(text + anchor));
}

/** Puts a row at the end of a table of terminology. */
export function addRow(table: string, row: object): void {
  const file = `terminology/${table}.json`;
  insert(file, '\n  ]\n}', `,\n    ${JSON.stringify(row)}`);
}

/** Gives a code its display in a language. */
export function addDisplay(language: string, table: string, code: string, display: string): void {
  const file = `terminology/languages/${language}.json`;
  const content = JSON.parse(readScratch(file));
  content.displays[table][code] = display;
  write(file, `${JSON.stringify(content, null, 1)}\n`);
}
