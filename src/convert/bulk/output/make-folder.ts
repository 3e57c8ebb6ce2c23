import { mkdir, stat } from 'node:fs/promises';
import { dirname } from 'node:path';

/**
 * Makes a folder and those above it. Node says of a disk that is read-only that there is no such
 * folder, so that the first one missing is then made on its own, which says why it cannot be.
 */
export async function makeFolder(folder: string): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
  } catch (thrown) {
    let missing = folder;
    while (dirname(missing) !== missing && !(await isThere(dirname(missing)))) {
      missing = dirname(missing);
    }
    if (await isThere(missing)) throw thrown;
    await mkdir(missing);
    throw thrown;
  }
}

async function isThere(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}
