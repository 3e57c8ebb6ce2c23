import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';

const root = join(import.meta.dirname, '../..');

/** Lies where Node finds the example's own packages. */
export const bundled: string = join(root, 'examples/service/node_modules/.cache/serve.mjs');

export interface Service {
  readonly url: string;
  /** All that it wrote so far. */
  readonly output: () => string;
  readonly signal: (name: NodeJS.Signals) => void;
  /** Bytes that it holds in memory, as Linux counts them. */
  readonly resident: () => number;
  kill(): Promise<void>;
  /** Lets it end by itself. */
  end(): Promise<void>;
}

export function freshDatabase(): string {
  const folder = join(root, 'output/service');
  mkdirSync(folder, { recursive: true });
  return join(mkdtempSync(join(folder, 'test-')), 'exams.sqlite');
}

/** The service in a process of its own, ready to take exams. */
export async function startService(settings: Readonly<Record<string, string>>): Promise<Service> {
  const child = spawn(process.execPath, ['--enable-source-maps', bundled], {
    env: {
      ...process.env,
      PORT: '0',
      RETRY_FIRST_MS: '20',
      RETRY_LONGEST_MS: '200',
      FHIR_SETTLE_MS: '1000',
      ...settings,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let output = '';
  child.stdout.on('data', (chunk) => {
    output += chunk;
  });
  child.stderr.on('data', (chunk) => {
    output += chunk;
  });
  const exited = once(child, 'exit');
  for await (const line of createInterface({ input: child.stdout })) {
    const url = /^Listening on (\S+)$/.exec(line)?.[1];
    if (url !== undefined) {
      return {
        url,
        output: () => output,
        signal: (name) => child.kill(name),
        resident: () => residentOf(child),
        kill: () => stopped(child, 'SIGKILL', exited),
        end: () => stopped(child, 'SIGTERM', exited),
      };
    }
  }
  throw new Error(`the service did not start: ${output}`);
}

/** @see https://man7.org/linux/man-pages/man5/proc_pid_status.5.html */
function residentOf({ pid }: ChildProcess): number {
  const status = readFileSync(`/proc/${pid}/status`, 'utf8');
  return Number(/^VmRSS:\s+(\d+) kB$/m.exec(status)?.[1]) * 1024;
}

async function stopped(
  child: ChildProcess,
  signal: NodeJS.Signals,
  exited: Promise<unknown>,
): Promise<void> {
  if (child.exitCode === null && child.signalCode === null) {
    child.kill(signal);
    await exited;
  }
}

/** Status of the answer; undefined where the connection broke. */
export async function post(url: string, body: string): Promise<number | undefined> {
  try {
    const response = await fetch(`${url}/exams`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body,
      signal: AbortSignal.timeout(30_000),
    });
    await response.text();
    return response.status;
  } catch {
    return undefined;
  }
}

export interface Counts {
  readonly stored: number;
  readonly waiting: number;
  readonly refused: number;
}

export async function countsOf(url: string): Promise<Counts> {
  const response = await fetch(`${url}/outbox`);
  return (await response.json()) as Counts; // what the service documents of this address
}

/** The counts as soon as nothing waits any more. */
export async function drained(url: string): Promise<Counts> {
  for (;;) {
    const counts = await countsOf(url);
    if (counts.waiting === 0) return counts;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}
