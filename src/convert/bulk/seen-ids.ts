import { hash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

export const seenFile = 'exam-ids.bin';

/**
 * Exam ids that a run has met, as 64 bits of their SHA-256: 16 bytes for each at most, a million in
 * 16 MB. Two ids of a million share them by chance once in some 37 million runs; the second would
 * then go to quarantine as a repeat, and not be lost.
 */
export interface SeenIds {
  /** True when the id is new; it is then known. */
  readonly add: (id: string) => boolean;
  readonly size: () => number;
  /** Ids added since the last call, 8 bytes each, for the file that a resumed run reads. */
  readonly takeNew: () => Buffer;
}

/** @param known what `takeNew` gave before, joined */
export function seenIds(known: Buffer = Buffer.alloc(0)): SeenIds {
  let slots = new Uint32Array(1 << 13);
  let count = 0;
  let fresh: Buffer[] = [];

  const place = (high: number, low: number): number => {
    const mask = slots.length / 2 - 1;
    let at = low & mask;
    // 0, 0 marks an empty slot.
    while (slots[at * 2] !== 0 || slots[at * 2 + 1] !== 0) {
      if (slots[at * 2] === high && slots[at * 2 + 1] === low) return -1;
      at = (at + 1) & mask;
    }
    return at;
  };
  const put = (high: number, low: number): boolean => {
    if (count * 4 >= slots.length) grow();
    const at = place(high, low);
    if (at < 0) return false;
    slots[at * 2] = high;
    slots[at * 2 + 1] = low;
    count += 1;
    return true;
  };
  const grow = (): void => {
    const before = slots;
    slots = new Uint32Array(before.length * 2);
    count = 0;
    for (let at = 0; at < before.length; at += 2) {
      const [high = 0, low = 0] = [before[at], before[at + 1]];
      if (high !== 0 || low !== 0) put(high, low);
    }
  };
  for (let at = 0; at + 8 <= known.length; at += 8)
    put(known.readUInt32LE(at), known.readUInt32LE(at + 4));
  return {
    add: (id) => {
      const digest = hash('sha256', id, 'buffer').subarray(0, 8);
      const isNew = put(digest.readUInt32LE(0), digest.readUInt32LE(4));
      if (isNew) fresh.push(Buffer.from(digest));
      return isNew;
    },
    size: () => count,
    takeNew: () => {
      const taken = Buffer.concat(fresh);
      fresh = [];
      return taken;
    },
  };
}

/** The ids that a stopped run had met at its checkpoint. */
export async function readSeenIds(
  folder: string,
  lengths: { readonly [file: string]: number },
): Promise<SeenIds> {
  const length = lengths[seenFile] ?? 0;
  if (length === 0) return seenIds();
  const bytes = await readFile(join(folder, seenFile));
  return seenIds(bytes.subarray(0, length));
}
