import { mkdir, stat } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';

/**
 * Makes a folder and those above it, one by one from the first that is missing: asked to make them all,
 * Node says of a disk that is read-only that there is no such folder, and never answers where a file
 * system (such as /proc) lets no folder be made and says so.
 */
export async function makeFolder(folder: string): Promise<void> {
  const missing: string[] = [];
  for (let at = resolve(folder); !(await isFolder(at)); at = dirname(at)) {
    missing.push(at);
    if (dirname(at) === at) break;
  }
  for (const one of missing.reverse()) await make(one);
}

async function make(folder: string): Promise<void> {
  try {
    await mkdir(folder);
  } catch (thrown) {
    // Another program may have made it meanwhile.
    if (!(await isFolder(folder))) throw thrown;
  }
}

async function isFolder(path: string): Promise<boolean> {
  return stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );
}
