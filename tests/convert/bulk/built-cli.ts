import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { join } from 'node:path';

const root = join(import.meta.dirname, '../../..');
/** From the root of the project. */
const folder = 'output/convert-cli/dist';

/** Builds the library into a folder of its own, beside what `npm run build` makes; gives the program. */
export function buildCli(): string {
  const tool = (file: string, ...args: readonly string[]): void => {
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      [join(root, 'node_modules', file), ...args, folder],
      { cwd: root, encoding: 'utf8' },
    );
    if (status !== 0) throw new Error(`${file} failed\n${stdout}${stderr}`);
  };
  tool('typescript/bin/tsc', '-p', 'tsconfig.json', '--outDir');
  tool('tsx/dist/cli.mjs', 'src/generate/schema/compile-validators.ts', '--out');
  return join(root, folder, 'cli/bin.js');
}

export interface Ended {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly out: string;
  readonly err: string;
}

export interface Running {
  readonly child: ChildProcess;
  readonly ended: Promise<Ended>;
}

/** A call of the built program, in a process of its own. */
export function startCli(program: string, args: readonly string[]): Running {
  const child = spawn(process.execPath, [program, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
  let out = '';
  let err = '';
  child.stdout.on('data', (piece: Buffer) => {
    out += piece.toString();
  });
  child.stderr.on('data', (piece: Buffer) => {
    err += piece.toString();
  });
  const ended = new Promise<Ended>((resolve) => {
    child.once('close', (code, signal) => resolve({ code, signal, out, err }));
  });
  return { child, ended };
}
