import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

export const root: string = join(import.meta.dirname, '../..');

/** The library as built, which is what a user runs; typed by its sources. */
export async function built<Module>(file: string): Promise<Module> {
  return import(pathToFileURL(join(root, 'dist', file)).href);
}
