import { crc32, deflateRawSync } from 'node:zlib';

export interface ArchiveEntry {
  readonly name: string;
  readonly content: Buffer;
  readonly stored?: boolean;
  /** Size that the headers claim, where it is not that of the content. */
  readonly claimedSize?: number;
  readonly encrypted?: boolean;
  readonly method?: number;
}

/**
 * A zip archive, by the published format.
 * @see https://pkware.cachefly.net/webdocs/casestudies/APPNOTE.TXT sections 4.3.7, 4.3.12 and 4.3.16
 */
export function zipOf(entries: readonly ArchiveEntry[], comment = ''): Buffer {
  const locals: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const entry of entries) {
    const name = Buffer.from(entry.name);
    const data = entry.stored ? entry.content : deflateRawSync(entry.content);
    const head = headOf(entry, data.length, name.length);
    const local = Buffer.concat([Buffer.from([0x50, 0x4b, 3, 4]), head, name, data]);
    const central = Buffer.alloc(14);
    central.writeUInt32LE(offset, 10);
    // The directory repeats the head of the entry behind the version that made it.
    const made = Buffer.from([0x50, 0x4b, 1, 2, 20, 0]);
    directory.push(Buffer.concat([made, head, central, name]));
    locals.push(local);
    offset += local.length;
  }
  const list = Buffer.concat(directory);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(entries.length, 8);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(list.length, 12);
  end.writeUInt32LE(offset, 16);
  end.writeUInt16LE(comment.length, 20);
  return Buffer.concat([...locals, list, end, Buffer.from(comment)]);
}

function headOf(entry: ArchiveEntry, packed: number, nameLength: number): Buffer {
  const head = Buffer.alloc(26);
  head.writeUInt16LE(20, 0);
  head.writeUInt16LE(0x800 | (entry.encrypted ? 1 : 0), 2);
  head.writeUInt16LE(entry.method ?? (entry.stored ? 0 : 8), 4);
  head.writeUInt32LE(crc32(entry.content), 10);
  head.writeUInt32LE(packed, 14);
  head.writeUInt32LE(entry.claimedSize ?? entry.content.length, 18);
  head.writeUInt16LE(nameLength, 22);
  return head;
}
