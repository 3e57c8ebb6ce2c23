import { execFileSync } from 'node:child_process';
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { tableShapes } from './terminology-shape.ts';

/**
 * Prints how large each table is as shipped, and how long a fresh Node takes to load the tables and
 * the parts that are loaded only when used. Run: npm run terminology-sizes
 */
const project = fileURLToPath(new URL('../../../', import.meta.url));
const tables = join(project, 'src', 'terminology', 'tables');
const work = join(project, 'output', 'terminology-sizes');

/** Modules that an application loads by themselves. */
const entries = [
  ['all tables, as one catalogue', 'catalogue.ts'],
  ['look-up of the free set', 'free-set.ts'],
  ['German', 'languages/de.ts'],
] as const;

const RUNS = 7;

async function minified(file: string): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [file],
    bundle: true,
    minify: true,
    format: 'esm',
    write: false,
  });
  return outputFiles[0]?.text ?? '';
}

function line(name: string, code: string, more = ''): string {
  const size = (bytes: number): string => `${(bytes / 1024).toFixed(1)} KB`.padStart(10);
  return `${name.padEnd(30)}${size(code.length)}${size(gzipSync(code).length)}${more}`;
}

/** Median time to import a module in a Node of its own, in milliseconds. */
function loadTime(file: string): number {
  const url = JSON.stringify(pathToFileURL(file).href);
  const script = `const start = performance.now(); await import(${url}); console.log(performance.now() - start);`;
  const times = Array.from({ length: RUNS }, () => {
    const args = ['--input-type=module', '--eval', script];
    return Number(execFileSync(process.execPath, args, { encoding: 'utf8' }));
  });
  return times.sort((a, b) => a - b)[Math.floor(RUNS / 2)] ?? Number.NaN;
}

async function main(): Promise<void> {
  await mkdir(work, { recursive: true });
  console.info(`${'table, minified'.padEnd(30)}${'size'.padStart(10)}${'gzip'.padStart(10)}`);
  const names = (await readdir(tables)).filter((name) => {
    return Object.hasOwn(tableShapes, name.replace('.ts', ''));
  });
  for (const name of names) {
    console.info(line(name.replace('.ts', ''), await minified(join(tables, name))));
  }
  const ids = await readFile(join(tables, 'free-set-ids.ts'), 'utf8');
  console.info(line('free-set-ids', ids));
  console.info(`\n${'loaded together, minified'.padEnd(50)}  median load of ${RUNS}`);
  for (const [name, entry] of entries) {
    const code = await minified(join(project, 'src', 'terminology', entry));
    const file = join(work, `${entry.replaceAll('/', '-').replace('.ts', '')}.mjs`);
    await writeFile(file, code);
    console.info(line(name, code, `${loadTime(file).toFixed(1).padStart(10)} ms`));
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await main();
