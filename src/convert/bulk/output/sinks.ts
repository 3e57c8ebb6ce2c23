import { type FileHandle, open, readdir, truncate } from 'node:fs/promises';
import { join } from 'node:path';
import { makeFolder } from './make-folder.ts';

/** Characters that are held back before they are written: few, since long-lived text costs memory. */
const HELD = 1 << 16;

/** Files of a folder that only grow, each at a length that is known at every checkpoint. */
export interface Sinks {
  readonly add: (file: string, text: string) => Promise<void>;
  readonly addBytes: (file: string, bytes: Buffer) => Promise<void>;
  /** All files on disk, with their lengths. */
  readonly sync: () => Promise<{ readonly [file: string]: number }>;
  readonly close: () => Promise<void>;
}

interface Sink {
  readonly handle: FileHandle;
  held: string[];
  heldLength: number;
  /** Bytes in the file. */
  length: number;
}

/** Sinks in `folder`, which go on behind the given lengths. */
export function openSinks(folder: string, lengths: { readonly [file: string]: number }): Sinks {
  const sinks = new Map<string, Sink>();

  const sinkOf = async (file: string): Promise<Sink> => {
    const known = sinks.get(file);
    if (known !== undefined) return known;
    const start = Object.hasOwn(lengths, file) ? (lengths[file] ?? 0) : 0;
    const handle = await open(join(folder, file), start > 0 ? 'r+' : 'w');
    const sink = { handle, held: [], heldLength: 0, length: start };
    sinks.set(file, sink);
    return sink;
  };
  const flush = async (sink: Sink): Promise<void> => {
    if (sink.heldLength === 0) return;
    const text = sink.held.join('');
    sink.held = [];
    sink.heldLength = 0;
    await write(sink, Buffer.from(text));
  };
  const write = async (sink: Sink, bytes: Buffer): Promise<void> => {
    let written = 0;
    while (written < bytes.length) {
      const { bytesWritten } = await sink.handle.write(
        bytes,
        written,
        bytes.length - written,
        sink.length + written,
      );
      written += bytesWritten;
    }
    sink.length += bytes.length;
  };
  return {
    add: async (file, text) => {
      const sink = await sinkOf(file);
      sink.held.push(text);
      sink.heldLength += text.length;
      if (sink.heldLength >= HELD) await flush(sink);
    },
    addBytes: async (file, bytes) => {
      const sink = await sinkOf(file);
      await flush(sink);
      await write(sink, bytes);
    },
    sync: async () => {
      const result: { [file: string]: number } = { ...lengths };
      for (const [file, sink] of [...sinks].sort(([one], [other]) => (one < other ? -1 : 1))) {
        await flush(sink);
        await sink.handle.datasync();
        result[file] = sink.length;
      }
      return result;
    },
    close: async () => {
      for (const sink of sinks.values()) await sink.handle.close();
      sinks.clear();
    },
  };
}

/**
 * Files that a run grows: a resource type has a capital. Others in its folder are none of its
 * business, such as a quarantine file that is being mended.
 */
const grown = /^(?:[A-Z][A-Za-z]*|bundles|exams|issues|quarantine|ledger)\.ndjson$|^exam-ids\.bin$/;

/** Cuts the files of a run back to the given lengths; those without one become empty. */
export async function cutBack(
  folder: string,
  lengths: { readonly [file: string]: number },
): Promise<void> {
  await makeFolder(folder);
  for (const file of await readdir(folder)) {
    if (!grown.test(file)) continue;
    await truncate(join(folder, file), Object.hasOwn(lengths, file) ? lengths[file] : 0);
  }
}
