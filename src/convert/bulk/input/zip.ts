import { basename } from 'node:path';
import { Readable } from 'node:stream';
import { crc32, createInflateRaw } from 'node:zlib';
import type { Issue } from '../../../issues/issue.ts';
import { issue } from '../../issue.ts';
import { type ByteSource, fileSource } from './byte-source.ts';
import { inflatedWithin } from './inflate-limit.ts';
import { type DirectoryEntry, readDirectory, ZipFault, type ZipReason } from './zip-directory.ts';

/** A file in an archive. It is read in place and never written to disk under its name. */
export interface ZipEntry {
  readonly name: string;
  readonly compressedSize: number;
  readonly open: (read: (bytes: number) => void) => AsyncIterable<Buffer>;
}

export interface ZipEntries {
  readonly entries: readonly ZipEntry[];
  readonly issues: readonly Issue[];
}

/**
 * Files of a zip archive in order of their names, by its central directory. Encrypted entries, other
 * methods than store and deflate, and names that lead out of the archive give an issue.
 * @see https://pkware.cachefly.net/webdocs/casestudies/APPNOTE.TXT
 */
export async function zipEntries(path: string): Promise<ZipEntries> {
  const archive = basename(path);
  const issues: Issue[] = [];
  let file: ByteSource | undefined;
  try {
    file = await fileSource(path);
    const directory = await readDirectory(file);
    const entries = directory
      .filter((entry) => !entry.name.endsWith('/'))
      .filter((entry) => {
        const fault = entryFault(entry);
        if (fault !== undefined) issues.push(zipIssue(`${archive}!${entry.name}`, fault));
        return fault === undefined;
      })
      .sort((one, other) => (one.name < other.name ? -1 : 1))
      .map((entry) => ({
        name: entry.name,
        compressedSize: entry.compressedSize,
        open: (read: (bytes: number) => void) => entryBytes(() => fileSource(path), entry, read),
      }));
    return { entries, issues };
  } catch (error) {
    const fault = error instanceof ZipFault ? error.reason : 'archive';
    return { entries: [], issues: [...issues, zipIssue(archive, fault)] };
  } finally {
    await file?.close();
  }
}

export function entryFault({ name, method, encrypted }: DirectoryEntry): ZipReason | undefined {
  if (encrypted) return 'encrypted';
  if (method !== 0 && method !== 8) return 'method';
  const parts = name.split(/[/\\]/);
  const leadsOut = parts.includes('..') || /^[/\\]|^[A-Za-z]:/.test(name);
  return leadsOut ? 'leads-out' : undefined;
}

function zipIssue(name: string, reason: ZipReason): Issue {
  return issue('unreadable-input', [name], { reason });
}

const PIECE = 1 << 16;

/** The unpacked bytes of an entry, checked against what the directory says of it. */
export async function* entryBytes(
  open: () => Promise<ByteSource>,
  entry: DirectoryEntry,
  read: (bytes: number) => void,
): AsyncGenerator<Buffer> {
  let taken = 0;
  const packed = storedBytes(open, entry, (bytes) => {
    taken += bytes;
    read(bytes);
  });
  const unpacked = entry.method === 0 ? packed : inflated(packed, () => taken);
  let made = 0;
  let sum = 0;
  for await (const piece of unpacked) {
    made += piece.length;
    if (made > entry.size) throw new ZipFault('entry-long');
    sum = crc32(piece, sum);
    yield piece;
  }
  if (made < entry.size) throw new ZipFault('entry-short');
  if (sum !== entry.crc32) throw new ZipFault('checksum');
}

async function* inflated(
  packed: AsyncGenerator<Buffer>,
  taken: () => number,
): AsyncGenerator<Buffer> {
  const inflate = createInflateRaw({ chunkSize: PIECE });
  const source = Readable.from(packed);
  source.on('error', (error) => inflate.destroy(error));
  source.pipe(inflate);
  try {
    yield* inflatedWithin(inflate, taken);
  } finally {
    source.destroy();
    inflate.destroy();
  }
}

async function* storedBytes(
  open: () => Promise<ByteSource>,
  entry: DirectoryEntry,
  read: (bytes: number) => void,
): AsyncGenerator<Buffer> {
  const file = await open();
  try {
    // The local header repeats the name and may have another extra field than the directory.
    const local = await file.read(entry.offset, 30);
    if (local.length < 30 || local.readUInt32LE(0) !== 0x04034b50) throw new ZipFault('no-header');
    let at = entry.offset + 30 + local.readUInt16LE(26) + local.readUInt16LE(28);
    const end = at + entry.compressedSize;
    while (at < end) {
      const piece = await file.read(at, Math.min(PIECE, end - at));
      if (piece.length === 0) throw new ZipFault('ends-within');
      at += piece.length;
      read(piece.length);
      yield piece;
    }
  } finally {
    await file.close();
  }
}
