import { spawn } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { build } from 'esbuild';
import { shapes } from './shapes/index.ts';

/** What one call of an entry took with an input of one shape and size. */
export interface Point {
  readonly size: number;
  readonly seconds: number;
  readonly memory: number;
  readonly thrown?: string;
}

export interface Growth {
  readonly entry: string;
  readonly name: string;
  readonly points: readonly Point[];
  /** How the process ended where it did not end well: out of memory, or no answer. */
  readonly ended?: string;
}

/** Bundles the program that measures, so that each case starts in a new process within 0.2 seconds. */
export async function measuring(folder: string): Promise<string> {
  mkdirSync(folder, { recursive: true });
  const outfile = `${folder}/measure-shapes.mjs`;
  await build({
    entryPoints: [new URL('measure-shapes.ts', import.meta.url).pathname],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'warning',
    external: ['fhirpath'],
    define: {
      'import.meta.url': JSON.stringify(import.meta.url.replace('growth.ts', 'shapes/exams.ts')),
    },
    banner: {
      js: "import{createRequire}from'node:module';const require=createRequire(process.cwd()+'/');",
    },
  });
  return outfile;
}

/** One shape in a process of its own, with a heap of 2 GB. */
export async function grown(
  program: string,
  { entry, name }: { readonly entry: string; readonly name: string },
  sizes: readonly number[],
  seconds = 60,
): Promise<Growth> {
  const limits = ['--max-old-space-size=2048', '--expose-gc'];
  const child = spawn(
    process.execPath,
    [...limits, program, entry, name, sizes.join(), String(seconds)],
    {
      stdio: ['ignore', 'pipe', 'ignore'],
    },
  );
  const timer = setTimeout(() => child.kill('SIGKILL'), seconds * 10_000);
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve));
  const points: Point[] = [];
  for await (const line of createInterface(child.stdout)) points.push(JSON.parse(line));
  const code = await ended;
  clearTimeout(timer);
  return {
    entry,
    name,
    points,
    ...(code !== 0 && { ended: code === null ? 'killed' : `exit ${code}` }),
  };
}

/**
 * How a figure grows with the size: the slope on logarithmic scales between the largest sizes that are
 * a factor of 4 or more apart. 1 is linear. Undefined where the figures are too small to tell.
 */
export function exponent(
  points: readonly Point[],
  figure: 'seconds' | 'memory',
  least: number,
): number | undefined {
  const last = points.at(-1);
  const before = points.filter((point) => last && point.size * 4 <= last.size).at(-1);
  if (last === undefined || before === undefined || last[figure] < least) return undefined;
  const from = Math.max(before[figure], least / 10);
  return Math.log(last[figure] / from) / Math.log(last.size / before.size);
}

function line({ entry, name, points, ended }: Growth): string {
  const last = points.at(-1);
  const perMegabyte = last && (last.seconds / last.size) * 1e6;
  const thrown = points.find((point) => point.thrown !== undefined)?.thrown;
  const cells = [
    entry,
    name,
    exponent(points, 'seconds', 0.02)?.toFixed(2) ?? '-',
    exponent(points, 'memory', 50e6)?.toFixed(2) ?? '-',
    last === undefined ? '-' : `${(last.size / 1e6).toFixed(2)} MB`,
    last?.seconds.toFixed(3) ?? '-',
    perMegabyte?.toFixed(2) ?? '-',
    last === undefined ? '-' : String(Math.round(last.memory / 1e6)),
    thrown ?? ended ?? '',
  ];
  return `| ${cells.join(' | ')} |`;
}

/** `tsx tests/hostile/growth.ts [SIZES] [ENTRY]`: the table, and each case as soon as it is measured. */
async function main([
  sizes = '10000,100000,1000000,10000000',
  only,
]: readonly string[]): Promise<void> {
  const program = await measuring('output/hostile');
  console.log(
    '| entry | shape | exponent of time | of memory | largest | seconds | s/MB | MB held | |',
  );
  console.log('|---|---|---|---|---|---|---|---|---|');
  const all: Growth[] = [];
  for (const shape of shapes) {
    if (only !== undefined && !`${shape.entry} ${shape.name}`.includes(only)) continue;
    const found = await grown(program, shape, sizes.split(',').map(Number));
    all.push(found);
    console.log(line(found));
  }
  writeFileSync('output/hostile/growth.json', JSON.stringify(all, null, 1));
}

if (process.argv[1]?.endsWith('growth.ts')) await main(process.argv.slice(2));
