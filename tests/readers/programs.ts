import { execFile, spawn, spawnSync } from 'node:child_process';
import { access, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const run = promisify(execFile);
const here = fileURLToPath(new URL('.', import.meta.url));
const built = fileURLToPath(new URL('../../output/readers/', import.meta.url));

/** A command that reads requests, one a line, and answers each with one line. */
export interface Program {
  readonly command: string;
  readonly args: readonly string[];
}

/**
 * fhir.resources, in an environment of its own with the versions that its requirements file pins.
 * @throws Error when Python or a package is missing
 */
export function pythonReader(requirements: 'r4' | 'r4b-r5'): Promise<Program> {
  return pythonProgram('read_bundles.py', requirements);
}

/**
 * Readers of CSV, HL7 v2 and XML, in the same way.
 * @throws Error when Python or a package is missing
 */
export function legacyReader(): Promise<Program> {
  return pythonProgram('read_legacy.py', 'legacy');
}

/**
 * openpyxl, which writes workbooks and reads them, in the same way.
 * @throws Error when Python or a package is missing
 */
export function workbookWriter(): Promise<Program> {
  return pythonProgram('write_workbooks.py', 'workbooks');
}

/**
 * fhir4ds, which makes views into SQL for DuckDB, in the same way.
 * @throws Error when Python or a package is missing
 */
export function viewsByDuckDb(): Promise<Program> {
  return pythonProgram('run_views.py', 'views');
}

/**
 * medplum's engine for views, installed with the version that its lock file pins.
 * @throws Error when npm or the package is missing
 */
export function viewsByMedplum(): Promise<Program> {
  return nodeProgram('run_views.mjs', ['--experimental-websocket']);
}

/**
 * An engine for template-based extraction, in the same way.
 * @throws Error when npm or the package is missing
 */
export function extractionEngine(): Promise<Program> {
  return nodeProgram('run_extract.mjs');
}

async function nodeProgram(program: string, flags: readonly string[] = []): Promise<Program> {
  const folder = join(here, 'node');
  await run('npm', ['ci', '--silent', '--ignore-scripts', '--prefix', folder]);
  return { command: process.execPath, args: [...flags, '--no-warnings', join(folder, program)] };
}

async function pythonProgram(program: string, requirements: string): Promise<Program> {
  const list = join(here, 'python', `requirements-${requirements}.txt`);
  const environment = join(built, `python-${requirements}`);
  const python = join(environment, 'bin', 'python');
  const wanted = await readFile(list, 'utf8');
  const stamp = `${environment}.txt`;
  if ((await readFile(stamp, 'utf8').catch(() => '')) !== wanted) {
    await rm(stamp, { force: true });
    await rm(environment, { recursive: true, force: true });
    await mkdir(built, { recursive: true });
    await run('python3', ['-m', 'venv', environment]);
    const quiet = ['--quiet', '--disable-pip-version-check'];
    await run(python, ['-m', 'pip', 'install', ...quiet, '--requirement', list]);
    // Written last: an environment that was broken off is made anew.
    await writeFile(stamp, wanted);
  }
  return { command: python, args: [join(here, 'python', program)] };
}

/** Why fhirbolt cannot be built on this machine; nothing when it can. */
export function whyNoRust(): string | undefined {
  if (spawnSync('cargo', ['--version']).status === 0) return undefined;
  return 'cargo was not found on the path: fhirbolt is built with a Rust toolchain, which is not installed for it';
}

/**
 * fhirbolt, built with the versions that its manifest pins.
 * @throws Error when Cargo or a crate is missing
 */
export async function rustReader(): Promise<Program> {
  const target = join(built, 'rust');
  const command = join(target, 'debug', 'read-bundles');
  const manifest = join(here, 'rust', 'Cargo.toml');
  const options = ['--quiet', '--manifest-path', manifest, '--target-dir', target];
  await run('cargo', ['build', ...options]);
  await access(command);
  return { command, args: [] };
}

/** The answers of a program, in the order of the requests. */
export async function ask<Answer>(
  { command, args }: Program,
  requests: Iterable<object>,
): Promise<Answer[]> {
  const child = spawn(command, args, { stdio: ['pipe', 'pipe', 'inherit'] });
  const ended = new Promise<number | null>((resolve, reject) => {
    child.on('error', reject);
    child.on('close', resolve);
  });
  const lines = (function* () {
    for (const request of requests) yield `${JSON.stringify(request)}\n`;
  })();
  // A pipe that breaks is told by the exit code, with what the program wrote to standard error.
  const sent = pipeline(Readable.from(lines), child.stdin).catch(() => {});
  const answers: Answer[] = [];
  for await (const line of createInterface({ input: child.stdout })) {
    answers.push(JSON.parse(line) as Answer); // the shape is that of the programs here
  }
  await sent;
  const code = await ended;
  if (code !== 0) throw new Error(`${command} ended with ${code}`);
  return answers;
}
