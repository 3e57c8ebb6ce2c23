/// <reference types="node" />
import { type FileHandle, open, rename, rm, stat } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { makeFolder } from '../../convert/bulk/output/make-folder.ts';
import { fileFailure } from '../failure.ts';
import type { CliIo } from '../io.ts';

/** Where the result of a command goes. Nothing stands at the place of a file before `finish`. */
export interface Output {
  readonly write: (text: string) => Promise<void>;
  readonly finish: () => Promise<void>;
  /** Leaves an earlier file as it was. */
  readonly discard: () => Promise<void>;
}

/** Standard output when `path` is undefined or `-`, else a file that appears whole or not at all. */
export function outputTo(io: CliIo, path: string | undefined): Output {
  if (path === undefined || path === '-') {
    return { write: io.out, finish: async () => {}, discard: async () => {} };
  }
  const target = resolve(io.cwd, path);
  let part = `${target}.${process.pid}.part`;
  const fail = (thrown: unknown): never => {
    throw fileFailure('write', path, thrown);
  };
  // Opened with the first text, so that a call that gives nothing leaves no trace.
  let file: FileHandle | undefined;
  const opened = async (): Promise<FileHandle> => {
    if (file !== undefined) return file;
    await makeFolder(dirname(target)).catch(fail);
    // A device or pipe is written into: a file put in its place would be the end of it.
    const there = await stat(target).catch(() => undefined);
    if (there !== undefined && !there.isFile() && !there.isDirectory()) part = target;
    file = await open(part, 'w').catch(fail);
    return file;
  };
  return {
    write: async (text) => {
      await (await opened()).writeFile(text).catch(fail);
    },
    finish: async () => {
      await (await opened()).close().catch(fail);
      if (part !== target) await rename(part, target).catch(fail);
      file = undefined;
    },
    discard: async () => {
      if (file === undefined) return;
      await file.close().catch(() => {});
      if (part !== target) await rm(part, { force: true });
    },
  };
}

/** A file with this text, whole or not at all. */
export async function writeWhole(io: CliIo, path: string, text: string): Promise<void> {
  const output = outputTo(io, path);
  try {
    await output.write(text);
    await output.finish();
  } catch (thrown) {
    await output.discard();
    throw thrown;
  }
}
