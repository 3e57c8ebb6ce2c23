import iconv from 'iconv-lite';
import type { ConversionFacts } from '../../issue.ts';
import type { ByteSource } from './byte-source.ts';

export interface DirectoryEntry {
  readonly name: string;
  readonly method: number;
  readonly encrypted: boolean;
  readonly crc32: number;
  readonly compressedSize: number;
  readonly size: number;
  /** Place of the local header. */
  readonly offset: number;
}

export type ZipReason = Exclude<
  ConversionFacts<'unreadable-input'>['reason'],
  'input' | WorkbookReason
>;

/** Why a workbook cannot be read, although its archive can, or is none. */
export type WorkbookReason =
  | 'encrypted-workbook'
  | 'binary-workbook'
  | 'not-workbook'
  | 'damaged-workbook'
  | 'empty-workbook'
  | 'no-sheet'
  | 'several-sheets';

/** The archive is not one, or contradicts itself. */
export class ZipFault extends Error {
  readonly code = 'ZIP_FAULT';
  readonly reason: ZipReason;

  constructor(reason: ZipReason) {
    super(reason);
    this.reason = reason;
  }
}

/** Longest end record: 22 bytes and a comment of up to 65535. */
const LONGEST_END = 22 + 65_535;
/** Largest directory that is read: some hundred thousand entries. */
const LARGEST_DIRECTORY = 64 * 1024 * 1024;

/**
 * The central directory of an archive, zip64 included.
 * @see https://pkware.cachefly.net/webdocs/casestudies/APPNOTE.TXT sections 4.3.12 to 4.3.16
 */
export async function readDirectory(file: ByteSource): Promise<DirectoryEntry[]> {
  const { size } = file;
  const tail = await readAt(file, Math.max(0, size - LONGEST_END), Math.min(size, LONGEST_END));
  const end = tail.lastIndexOf(Buffer.from([0x50, 0x4b, 0x05, 0x06]));
  if (end < 0 || end + 22 > tail.length) throw new ZipFault('not-zip');
  let length = tail.readUInt32LE(end + 12);
  let offset = tail.readUInt32LE(end + 16);
  if (offset === 0xffffffff || length === 0xffffffff) {
    if (end < 20 || tail.readUInt32LE(end - 20) !== 0x07064b50) throw new ZipFault('zip64-end');
    const record = await readAt(file, safe(tail.readBigUInt64LE(end - 20 + 8)), 56);
    if (record.readUInt32LE(0) !== 0x06064b50) throw new ZipFault('zip64-end');
    length = safe(record.readBigUInt64LE(40));
    offset = safe(record.readBigUInt64LE(48));
  }
  if (length > LARGEST_DIRECTORY || offset + length > size) throw new ZipFault('directory-bounds');
  return entriesOf(await readAt(file, offset, length));
}

function entriesOf(directory: Buffer): DirectoryEntry[] {
  const entries: DirectoryEntry[] = [];
  let at = 0;
  while (at + 46 <= directory.length) {
    if (directory.readUInt32LE(at) !== 0x02014b50) throw new ZipFault('directory-damaged');
    const nameLength = directory.readUInt16LE(at + 28);
    const extraLength = directory.readUInt16LE(at + 30);
    const commentLength = directory.readUInt16LE(at + 32);
    const next = at + 46 + nameLength + extraLength + commentLength;
    if (next > directory.length) throw new ZipFault('directory-damaged');
    const flags = directory.readUInt16LE(at + 8);
    const name = directory.subarray(at + 46, at + 46 + nameLength);
    const extra = directory.subarray(at + 46 + nameLength, at + 46 + nameLength + extraLength);
    entries.push({
      // Bit 11: the name is UTF-8; otherwise code page 437.
      name: (flags & 0x800) !== 0 ? name.toString('utf8') : iconv.decode(name, 'cp437'),
      method: directory.readUInt16LE(at + 10),
      encrypted: (flags & 1) !== 0,
      crc32: directory.readUInt32LE(at + 16),
      ...sizesOf(directory, at, extra),
    });
    at = next;
  }
  return entries;
}

/** Sizes and place; values of FFFFFFFF stand in the zip64 extra field, in this order. */
function sizesOf(
  directory: Buffer,
  at: number,
  extra: Buffer,
): Pick<DirectoryEntry, 'size' | 'compressedSize' | 'offset'> {
  const wide = zip64Field(extra);
  let used = 0;
  const value = (place: number): number => {
    const short = directory.readUInt32LE(at + place);
    if (short !== 0xffffffff) return short;
    if (wide === undefined || used + 8 > wide.length) throw new ZipFault('zip64-size');
    used += 8;
    return safe(wide.readBigUInt64LE(used - 8));
  };
  const size = value(24);
  const compressedSize = value(20);
  return { size, compressedSize, offset: value(42) };
}

function zip64Field(extra: Buffer): Buffer | undefined {
  let at = 0;
  while (at + 4 <= extra.length) {
    const length = extra.readUInt16LE(at + 2);
    if (extra.readUInt16LE(at) === 1) return extra.subarray(at + 4, at + 4 + length);
    at += 4 + length;
  }
  return undefined;
}

async function readAt(file: ByteSource, at: number, length: number): Promise<Buffer> {
  const bytes = await file.read(at, length);
  if (bytes.length < length) throw new ZipFault('archive-short');
  return bytes;
}

function safe(value: bigint): number {
  if (value > BigInt(Number.MAX_SAFE_INTEGER)) throw new ZipFault('size-bounds');
  return Number(value);
}
