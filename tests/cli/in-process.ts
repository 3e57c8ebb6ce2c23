import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { cli } from '../../src/cli/cli.ts';

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export interface Surroundings {
  /** Standard input as one text, or in pieces of bytes; a person at the keyboard where left out. */
  readonly stdin?: string | readonly Uint8Array[];
  readonly cwd?: string;
}

/** Runs the command line in this process, with everything it says kept apart. */
export async function run(
  argv: readonly string[],
  { stdin, cwd = import.meta.dirname }: Surroundings = {},
): Promise<Ran> {
  const out: string[] = [];
  const err: string[] = [];
  const pieces = typeof stdin === 'string' ? [new TextEncoder().encode(stdin)] : (stdin ?? []);
  const code = await cli(argv, {
    stdin: piecesOf(pieces),
    interactive: stdin === undefined,
    out: async (text) => void out.push(text),
    err: async (text) => void err.push(text),
    errIsTerminal: false,
    now: () => new Date('2025-12-01T08:00:00Z'),
    cwd,
  });
  return { code, out: out.join(''), err: err.join('') };
}

async function* piecesOf(pieces: readonly Uint8Array[]): AsyncGenerator<Uint8Array> {
  yield* pieces;
}

/** Runs `work` with an empty folder that is gone afterwards. */
export async function inFolder(work: (folder: string) => Promise<void>): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'face-neck-'));
  try {
    await work(folder);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** Path of the JSON of an example exam. */
export function examplePath(name: string): string {
  return join(import.meta.dirname, '../../examples/exams', `${name}.json`);
}
