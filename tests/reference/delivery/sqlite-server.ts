import { execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { access, mkdir, mkdtemp, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { promisify } from 'node:util';
import { publishedExamples } from '../definitions.ts';
import type { FhirServer } from '../server.ts';

const run = promisify(execFile);
const CRATE = 'helios-hfs';
const VERSION = '0.2.7';
const servers = join(import.meta.dirname, '../../../output/servers');

/**
 * A FHIR server in Rust on SQLite, by people who wrote neither of the others. It is built once to
 * output/servers, which takes a quarter of an hour on two cores and 2 GB on the way.
 * @throws Error where Cargo is missing, or cannot build it
 */
export async function buildSqliteServer(): Promise<string> {
  const root = join(servers, `${CRATE}-${VERSION}`);
  const program = join(root, 'bin', 'hfs');
  const made = await access(program).then(
    () => true,
    () => false,
  );
  if (made) return program;
  await mkdir(servers, { recursive: true });
  const target = join(servers, 'build');
  const features = ['--debug', '--locked', '--no-default-features', '--features', 'R4,sqlite'];
  const install = ['install', `${CRATE}@${VERSION}`, ...features, '--root', `${root}.part`];
  await run('cargo', install, {
    env: { ...process.env, CARGO_TARGET_DIR: target, CARGO_PROFILE_DEV_DEBUG: '0' },
    maxBuffer: 64 * 1024 * 1024,
  });
  // Renamed last: a build that was broken off is not taken for a whole one.
  await rename(`${root}.part`, root);
  await rm(target, { recursive: true, force: true });
  return program;
}

/** The server on a free port of this machine, with a database that is gone afterwards. */
export async function startSqliteServer(program: string): Promise<FhirServer> {
  const folder = await mkdtemp(join(tmpdir(), 'sqlite-server-'));
  const data = join(folder, 'data');
  await mkdir(data);
  await writeFile(join(data, 'search-parameters-r4.json'), JSON.stringify(await searches()));
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  const child = spawn(program, ['--port', String(port)], {
    cwd: folder,
    env: {
      ...process.env,
      HFS_BASE_URL: url,
      HFS_DATA_DIR: data,
      HFS_DATABASE_URL: join(folder, 'db.sqlite'),
      HFS_REQUEST_TIMEOUT: '300',
      RUST_LOG: 'warn',
    },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const ended = once(child, 'close');
  const stop = async (): Promise<void> => {
    child.kill('SIGKILL');
    await ended;
    await rm(folder, { recursive: true, force: true });
  };
  for (let attempt = 0; attempt < 240; attempt++) {
    if (child.exitCode !== null) break;
    const answer = await fetch(`${url}/metadata`).catch(() => undefined);
    if (answer?.ok === true) return { url, stop };
    await setTimeout(500);
  }
  await stop();
  throw new Error(`the server did not answer; it ended with ${child.exitCode}`);
}

/** What FHIR can be searched by, which the server does not bring: https://hl7.org/fhir/R4/searchparameter-registry.html */
async function searches(): Promise<object> {
  const folder = await publishedExamples('R4');
  const files = (await readdir(folder)).filter((name) => name.startsWith('SearchParameter-'));
  const resources = await Promise.all(
    files.map(async (name) => JSON.parse(await readFile(join(folder, name), 'utf8'))),
  );
  const entry = resources.map((resource) => ({ fullUrl: resource.url, resource }));
  return { resourceType: 'Bundle', type: 'collection', entry };
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  if (typeof address !== 'object' || address === null) throw new Error('there is no free port');
  return address.port;
}
