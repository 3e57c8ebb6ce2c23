import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = fileURLToPath(new URL('.', import.meta.url));
const LEAST_JAVA = 17;

/** What is built: each has its own jars, since the server's are some 280 MB. */
export type Program = 'validator' | 'server';

const sources: Record<Program, readonly string[]> = {
  validator: ['Definitions.java', 'DisplayChecks.java', 'ValidateCorpus.java'],
  server: ['Definitions.java', 'FhirServer.java'],
};

/** Thrown where the reference programs cannot be built or run here; the message says what is missing. */
export class ProgramError extends Error {
  override name = 'ProgramError';
}

/** Why the reference programs cannot be built and run on this machine; nothing when they can. */
export function whyNoJava(): string | undefined {
  const java = spawnSync('java', ['-version'], { encoding: 'utf8' });
  const version = Number(/version "(\d+)/.exec(java.stderr ?? '')?.[1]);
  if (java.error !== undefined || java.status !== 0) {
    return `java was not found on the path: the reference suites need a JDK of version ${LEAST_JAVA} or later`;
  }
  if (version < LEAST_JAVA) {
    return `java is version ${version}: the reference suites need a JDK of version ${LEAST_JAVA} or later`;
  }
  if (spawnSync('javac', ['-version']).status !== 0) {
    return 'javac was not found on the path: the reference suites need a JDK, not only a Java runtime';
  }
  if (spawnSync('mvn', ['-version']).status !== 0) {
    return 'mvn was not found on the path: the reference suites fetch their jars with Maven';
  }
  return undefined;
}

/** Whether {@link build} can work here. */
export function haveJava(): boolean {
  return whyNoJava() === undefined;
}

/**
 * Class path of a program, built first where it is not up to date. `mvn` fetches the jars of
 * pom.xml to lib/, `javac` compiles to classes/.
 * @throws ProgramError when Java or Maven is missing or fails
 */
export async function build(program: Program): Promise<string> {
  const lib = join(here, 'lib', program);
  const classes = join(here, 'classes', program);
  const classPath = `${classes}${delimiter}${join(lib, '*')}`;
  const missing = whyNoJava();
  if (missing !== undefined) throw new ProgramError(missing);

  await upToDate(lib, [join(here, 'pom.xml')], () =>
    run('mvn', [
      ...['-q', '-B', '-f', join(here, 'pom.xml'), '-P', program],
      ...['dependency:copy-dependencies', '-DincludeScope=runtime', `-DoutputDirectory=${lib}`],
    ]),
  );
  const files = sources[program].map((name) => join(here, 'src/main/java', name));
  const logging = join(here, 'src/main/resources/logback.xml');
  await upToDate(classes, [join(here, 'pom.xml'), ...files, logging], async () => {
    const options = ['--release', String(LEAST_JAVA), '-Xlint:all,-path,-processing,-classfile'];
    await run('javac', [...options, '-Werror', '-d', classes, '-cp', join(lib, '*'), ...files]);
    if (program === 'server')
      await writeFile(join(classes, 'logback.xml'), await readFile(logging));
  });
  return classPath;
}

/** Runs `make` on an emptied folder unless it was made from the same inputs before. */
async function upToDate(
  folder: string,
  inputs: string[],
  make: () => Promise<void>,
): Promise<void> {
  const hash = createHash('sha256');
  for (const input of inputs) hash.update(await readFile(input)).update('\0');
  const digest = hash.digest('hex');
  // Beside the folder and written last: a build that was broken off is not taken for a whole one.
  const stamp = `${folder}.sha256`;
  const made = await readFile(stamp, 'utf8').catch(() => '');
  const entries = await readdir(folder).catch(() => []);
  if (made === digest && entries.length > 0) return;
  await rm(stamp, { force: true });
  await rm(folder, { recursive: true, force: true });
  await mkdir(folder, { recursive: true });
  await make();
  await writeFile(stamp, digest);
}

function run(command: string, args: readonly string[]): Promise<void> {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { stdio: ['ignore', 'pipe', 'pipe'] });
    const output: Buffer[] = [];
    child.stdout.on('data', (chunk: Buffer) => output.push(chunk));
    child.stderr.on('data', (chunk: Buffer) => output.push(chunk));
    child.on('error', reject);
    child.on('close', (code) => {
      if (code === 0) return resolve();
      const text = Buffer.concat(output).toString('utf8').slice(-4000);
      reject(new ProgramError(`${command} ended with ${code}:\n${text}`));
    });
  });
}
