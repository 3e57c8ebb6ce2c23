import { type ChildProcess, execFile, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { header, mapping, rowAt } from './table.ts';

const run = promisify(execFile);
const built = join(import.meta.dirname, '../../output/scale');
export const examples: string = join(import.meta.dirname, '../../examples');

/** The command line in one file. */
export const program: string = join(built, 'convert.mjs');

/** What each worker is called with. */
export const calls = {
  convert: ['convert', '--lines', '--to', 'exams', '--mapping', mapping],
  export: ['export', '--lines', '--apart'],
  flat: ['flat', '--lines'],
} as const;

/** Why Spark cannot run on this machine; nothing where it can. */
export function whyNoSpark(): string | undefined {
  const java = spawnSync('java', ['-version'], { encoding: 'utf8' });
  if (java.error !== undefined || !/version "(17|8|11)/.test(java.stderr)) {
    return 'java 17 was not found on the path, which Spark 3.5 needs';
  }
  const venv = spawnSync('python3', ['-c', 'import ensurepip, venv']);
  return venv.status === 0 ? undefined : 'python3 with venv was not found on the path';
}

/** Python with the packages that the example pins, in an environment of its own. */
export async function sparkPython(): Promise<string> {
  const list = join(examples, 'spark/requirements.txt');
  const environment = join(built, 'python');
  const python = join(environment, 'bin/python');
  const wanted = await readFile(list, 'utf8');
  const stamp = `${environment}.txt`;
  if ((await readFile(stamp, 'utf8').catch(() => '')) === wanted) return python;
  await rm(stamp, { force: true });
  await rm(environment, { recursive: true, force: true });
  await mkdir(built, { recursive: true });
  await run('python3', ['-m', 'venv', environment]);
  const quiet = ['--quiet', '--disable-pip-version-check'];
  await run(python, ['-m', 'pip', 'install', ...quiet, '--requirement', list]);
  // Written last: an environment that was broken off is made anew.
  await writeFile(stamp, wanted);
  return python;
}

/** Records as lines, each named by its row. */
export function recordsOf(count: number): string[] {
  return Array.from({ length: count }, (_, at) =>
    JSON.stringify({ raw: rowAt(at + 1), header, id: at + 1 }),
  );
}

/** What one worker that nobody disturbs answers. */
export function answersOf(call: readonly string[], lines: readonly string[]): string[] {
  const { stdout, status } = spawnSync(process.execPath, [program, ...call], {
    input: lines.map((line) => `${line}\n`).join(''),
    encoding: 'utf8',
    maxBuffer: 1 << 30,
  });
  if (status !== 0 && status !== 4) throw new Error(`the worker ended with ${status}`);
  return stdout.split('\n').slice(0, -1);
}

interface Running {
  readonly pid: number;
  readonly parent: number;
  readonly command: string;
}

/** Processes that a process has started, and those that these have. */
export async function startedBy({ pid }: ChildProcess): Promise<readonly Running[]> {
  const all = (await Promise.all((await readdir('/proc')).map(processAt))).flat();
  const found: Running[] = [];
  let parents = new Set([pid]);
  while (parents.size > 0) {
    const children = all.filter(({ parent }) => parents.has(parent));
    found.push(...children);
    parents = new Set(children.map((child) => child.pid));
  }
  return found;
}

async function processAt(name: string): Promise<readonly Running[]> {
  if (!/^\d+$/.test(name)) return [];
  try {
    const status = await readFile(`/proc/${name}/status`, 'utf8');
    const command = await readFile(`/proc/${name}/cmdline`, 'utf8');
    const parent = Number(/^PPid:\s+(\d+)/m.exec(status)?.[1]);
    return [{ pid: Number(name), parent, command: command.replaceAll('\0', ' ') }];
  } catch {
    return []; // it has ended meanwhile
  }
}

/** The exit code, with what the process wrote to standard error where that is not 0. */
export async function ended(child: ChildProcess): Promise<{ code: number | null; said: string }> {
  const said: string[] = [];
  child.stderr?.on('data', (text) => said.push(String(text)));
  const [code] = await once(child, 'close');
  return { code, said: code === 0 ? '' : said.join('').slice(-4000) };
}
