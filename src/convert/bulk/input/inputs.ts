import { createReadStream } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { createGunzip } from 'node:zlib';
import { append } from '../../../data/append.ts';
import type { Issue } from '../../../issues/issue.ts';
import { issue } from '../../issue.ts';
import { inflatedWithin } from './inflate-limit.ts';
import { type ZipEntry, zipEntries } from './zip.ts';

/** One text to be converted: a file, or an entry of an archive. */
export interface Input {
  /** Name for reports: base name, and behind `!` the entry of an archive. */
  readonly name: string;
  /** Bytes on disk, for progress. */
  readonly size: number;
  /** Calls `read` with each number of bytes taken from the disk. */
  readonly open: (read: (bytes: number) => void) => AsyncIterable<Buffer>;
}

/** Texts that are read one after the other as one. */
export interface JoinedInput extends Pick<Input, 'name' | 'size'> {
  readonly parts: readonly Input[];
}

/** All inputs as one, named by the first and how many there are more; none where there is none. */
export function joined(inputs: readonly Input[]): readonly JoinedInput[] {
  const [first, ...more] = inputs;
  if (first === undefined) return [];
  const name = more.length === 0 ? first.name : `${first.name} (+${more.length})`;
  const size = inputs.reduce((sum, one) => sum + one.size, 0);
  return [{ name, size, parts: inputs }];
}

export interface FoundInputs {
  readonly inputs: readonly Input[];
  readonly issues: readonly Issue[];
}

/** Bytes read at a time: units of one piece are in memory together. */
const PIECE = 1 << 16;

/**
 * The texts that paths name, in the order given; folders are searched whole, in order of names.
 * `.gz` files are unpacked, `.zip` archives opened. What cannot be opened is told, and the rest kept.
 */
export async function findInputs(paths: readonly string[]): Promise<FoundInputs> {
  const inputs: Input[] = [];
  const issues: Issue[] = [];
  for (const path of paths) {
    for (const file of await filesBelow(path, issues)) {
      if (!file.toLowerCase().endsWith('.zip')) {
        inputs.push(await fileInput(file));
        continue;
      }
      const archive = await zipEntries(file);
      append(
        inputs,
        archive.entries.map((entry) => entryInput(file, entry)),
      );
      append(issues, archive.issues);
    }
  }
  return { inputs, issues };
}

async function filesBelow(path: string, issues: Issue[]): Promise<string[]> {
  try {
    const found = await stat(path);
    if (!found.isDirectory()) return [path];
    const entries = await readdir(path, { withFileTypes: true });
    const names = entries
      // Links are left alone: they could lead in circles or out of the folder.
      .filter((entry) => entry.isDirectory() || entry.isFile())
      .map((entry) => entry.name)
      .filter((name) => !name.startsWith('.'))
      .sort();
    const below: string[] = [];
    for (const name of names) append(below, await filesBelow(join(path, name), issues));
    return below;
  } catch (error) {
    issues.push(unreadableInput(basename(path), error));
    return [];
  }
}

async function fileInput(path: string): Promise<Input> {
  const { size } = await stat(path);
  const packed = path.toLowerCase().endsWith('.gz');
  return {
    name: basename(path),
    size,
    open: (read) => (packed ? gunzipped(path, read) : counted(path, read)),
  };
}

function entryInput(path: string, entry: ZipEntry): Input {
  return {
    name: `${basename(path)}!${entry.name}`,
    size: entry.compressedSize,
    open: (read) => entry.open(read),
  };
}

async function* counted(path: string, read: (bytes: number) => void): AsyncGenerator<Buffer> {
  const stream: AsyncIterable<Buffer> = createReadStream(path, { highWaterMark: PIECE });
  for await (const piece of stream) {
    read(piece.length);
    yield piece;
  }
}

async function* gunzipped(path: string, read: (bytes: number) => void): AsyncGenerator<Buffer> {
  let taken = 0;
  const stream = createReadStream(path, { highWaterMark: PIECE });
  stream.on('data', (piece) => {
    taken += piece.length;
    read(piece.length);
  });
  const unpacked = createGunzip({ chunkSize: PIECE });
  stream.on('error', (error) => unpacked.destroy(error));
  stream.pipe(unpacked);
  try {
    yield* inflatedWithin(unpacked, () => taken);
  } finally {
    stream.destroy();
    unpacked.destroy();
  }
}

/** An input that cannot be opened or read on. The message of the system may hold a path, so only its code is told. */
export function unreadableInput(name: string, error: unknown): Issue {
  const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
  return issue('unreadable-input', [name], { reason: 'input', error: code });
}
