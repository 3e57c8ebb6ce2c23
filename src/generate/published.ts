import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { access, mkdir, mkdtemp, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import list from './published.json' with { type: 'json' };

const run = promisify(execFile);
const project = fileURLToPath(new URL('../../', import.meta.url));
const store = join(project, 'output', 'published');

export interface PublishedPackage {
  readonly name: string;
  readonly version: string;
  /** As npm writes it: `sha512-` and the digest in base64. */
  readonly integrity: string;
  readonly what: string;
  readonly licence: string;
}

export const publishedPackages: readonly PublishedPackage[] = list.packages;

/**
 * Folder with the files of a published package. Fetched by `npm pack` from the registry that npm is
 * set to, held to the digest in published.json, and unpacked once to output/published.
 * @throws Error when the package is not in the list, cannot be fetched, or has another digest.
 */
export async function published(name: string, version: string): Promise<string> {
  const wanted = publishedPackages.find((row) => row.name === name && row.version === version);
  if (wanted === undefined) {
    throw new Error(`${name}@${version} is not listed in src/generate/published.json`);
  }
  const folder = join(store, `${name}@${version}`);
  if (await exists(folder)) return folder;

  await mkdir(join(folder, '..'), { recursive: true });
  const work = await mkdtemp(join(store, '.unpack-'));
  try {
    const archive = await fetchArchive(wanted, work);
    const files = join(work, 'files');
    await mkdir(files);
    await run('tar', ['-xzf', archive, '-C', files, '--strip-components=1']);
    await rename(files, folder).catch(async (error: unknown) => {
      // Another process may have been quicker; its folder is as good.
      if (!(await exists(folder))) throw error;
    });
  } finally {
    await rm(work, { recursive: true, force: true });
  }
  return folder;
}

async function fetchArchive(wanted: PublishedPackage, work: string): Promise<string> {
  const spec = `${wanted.name}@${wanted.version}`;
  const { stdout } = await run(
    'npm',
    ['pack', spec, '--silent', '--ignore-scripts', '--pack-destination', work],
    { cwd: project, maxBuffer: 64 * 1024 * 1024 },
  );
  const archive = join(work, stdout.trim().split('\n').at(-1) ?? '');
  const digest = createHash('sha512')
    .update(await readFile(archive))
    .digest('base64');
  if (`sha512-${digest}` !== wanted.integrity) {
    throw new Error(`${spec} does not have the digest listed in src/generate/published.json`);
  }
  return archive;
}

function exists(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}
