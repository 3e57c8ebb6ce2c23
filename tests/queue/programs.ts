import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';

/** Lies where Node finds the example's own packages. */
export const bundles: string = join(
  import.meta.dirname,
  '../../examples/queue/node_modules/.cache/queue',
);

/** Why the suite cannot run on this machine; nothing where it can. */
export function whyNoRedis(): string | undefined {
  const { status } = spawnSync('redis-server', ['--version']);
  return status === 0 ? undefined : 'redis-server was not found on the path (Debian: redis-server)';
}

export interface Redis {
  readonly port: number;
  /** Killed, and started again on the same port with what it had written. */
  readonly restart: () => Promise<void>;
  readonly stop: () => Promise<void>;
}

/** Redis on a free port of this machine, in a folder that is gone afterwards. */
export async function startRedis(): Promise<Redis> {
  const folder = mkdtempSync(join(tmpdir(), 'queue-redis-'));
  const port = await freePort();
  const place = ['--port', `${port}`, '--bind', '127.0.0.1', '--dir', folder];
  const kept = ['--save', '', '--appendonly', 'yes', '--appendfsync', 'always'];
  const start = async (): Promise<ChildProcess> => {
    const child = spawn('redis-server', [...place, ...kept], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    await lineOf(child, /Ready to accept connections/);
    return child;
  };
  let child = await start();
  return {
    port,
    restart: async () => {
      await ended(child, 'SIGKILL');
      child = await start();
    },
    stop: async () => {
      await ended(child, 'SIGTERM');
      rmSync(folder, { recursive: true, force: true });
    },
  };
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

async function lineOf(child: ChildProcess, sign: RegExp): Promise<void> {
  if (child.stdout === null) throw new TypeError('expected the output of the process as a pipe');
  for await (const line of createInterface({ input: child.stdout })) {
    if (!sign.test(line)) continue;
    // What comes after it must not fill the pipe.
    child.stdout.resume();
    return;
  }
  throw new Error(`a process ended before it said ${sign}`);
}

export interface Program {
  readonly child: ChildProcess;
  readonly kill: () => Promise<void>;
}

type Settings = Readonly<Record<string, string>>;

function start(file: string, args: readonly string[], settings: Settings): ChildProcess {
  return spawn(process.execPath, [join(bundles, file), ...args], {
    env: { ...process.env, ...settings },
    stdio: ['ignore', 'pipe', 'ignore'],
  });
}

/** A worker of the example that is ready, or is about to be. */
export async function startWorker(mapping: string, settings: Settings): Promise<Program> {
  const child = start('work.mjs', [mapping], {
    PROGRAM: join(bundles, 'convert.mjs'),
    ...settings,
  });
  await lineOf(child, /^Working$/);
  return { child, kill: () => ended(child, 'SIGKILL') };
}

/** Puts the records of files into the queue; killed after some milliseconds, where told. */
export async function add(
  args: readonly string[],
  settings: Settings,
  killAfter?: number,
): Promise<void> {
  const child = start('add.mjs', args, settings);
  child.stdout?.resume();
  const over = once(child, 'close');
  if (killAfter !== undefined) setTimeout(() => child.kill('SIGKILL'), killAfter);
  await over;
  if (killAfter === undefined && child.exitCode !== 0) throw new Error('adding failed');
}

export async function ended(child: ChildProcess, signal: NodeJS.Signals): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const over = once(child, 'exit');
  child.kill(signal);
  await over;
}
