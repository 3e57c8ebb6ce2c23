/// <reference types="node" />
import { readdir, stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { fileFailure } from '../failure.ts';
import type { CliIo } from '../io.ts';

const kinds = /\.(json|ndjson|jsonl)$/i;

/** The named files, with each folder in place of which the JSON and NDJSON files below it stand, by name. */
export async function withFolders(io: CliIo, files: readonly string[]): Promise<readonly string[]> {
  const found: string[] = [];
  for (const file of files) {
    if (file === '-') found.push(file);
    else for (const one of await below(io, file)) found.push(one);
  }
  return found;
}

async function below(io: CliIo, path: string): Promise<readonly string[]> {
  try {
    if (!(await stat(resolve(io.cwd, path))).isDirectory()) return [path];
    const entries = await readdir(resolve(io.cwd, path), { recursive: true });
    return entries
      .filter((name) => kinds.test(name))
      .sort()
      .map((name) => join(path, name));
  } catch (thrown) {
    throw fileFailure('read', path, thrown);
  }
}
