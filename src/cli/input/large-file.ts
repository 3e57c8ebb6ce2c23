/// <reference types="node" />
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import { TextDecoder } from 'node:util';
import { fileFailure } from '../failure.ts';
import type { CliIo } from '../io.ts';
import { type Document, decoded, documents, isComplete } from './documents.ts';

/** Bytes above which the values of a file take more memory than a small machine has: ten times as many. */
const LARGE_BYTES = 64_000_000;

/** Most of a first line that is looked at to tell whether a file has a document a line. */
const FIRST_LINE_BYTES = 16_000_000;

/** The text of a file, from its beginning each time. */
export type Chunks = () => AsyncIterable<string>;

/** A document whose text is not held: it is one JSON value in a file that is too large for that. */
export type LargeDocument = Omit<Document, 'text'> & { readonly chunks: Chunks };

/**
 * The documents of the named files, as `documents` gives them, but for large files of one JSON value,
 * which come as pieces. Standard input comes once and is always held; a document a line never is.
 */
export async function* documentsOrLarge(
  io: CliIo,
  files: readonly string[],
  large: number = LARGE_BYTES,
): AsyncGenerator<Document | LargeDocument, void, undefined> {
  if (files.length === 0) {
    yield* documents(io, files);
    return;
  }
  for (const file of files) {
    if (file !== '-' && (await isLargeValue(io, file, large))) {
      yield { input: file, line: 1, chunks: () => chunksOf(io, file) };
    } else {
      yield* documents(io, [file]);
    }
  }
}

async function isLargeValue(io: CliIo, file: string, large: number): Promise<boolean> {
  const path = resolve(io.cwd, file);
  const found = await stat(path).catch(() => undefined);
  // A pipe has no size, and cannot be read twice.
  if (found?.isFile() !== true || found.size <= large) return false;
  try {
    const first = await firstLine(path);
    return first.trimStart().startsWith('{') && !isComplete(first);
  } catch (thrown) {
    throw fileFailure('read', file, thrown);
  }
}

/** The first line that is not blank, or as much of it as is looked at. */
async function firstLine(path: string): Promise<string> {
  const decoder = new TextDecoder();
  let text = '';
  for await (const bytes of createReadStream(path, { end: FIRST_LINE_BYTES - 1 })) {
    // Without an encoding a stream gives bytes.
    text = (text + decoder.decode(bytes as Uint8Array, { stream: true })).trimStart();
    const feed = text.indexOf('\n');
    if (feed !== -1) return text.slice(0, feed);
  }
  return text;
}

/** @throws Unreadable where the file is not UTF-8 */
async function* chunksOf(io: CliIo, file: string): AsyncGenerator<string, void, undefined> {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  const stream = createReadStream(resolve(io.cwd, file));
  const failed = (thrown: unknown): never => {
    throw fileFailure('read', file, thrown);
  };
  const bytes: AsyncIterator<Uint8Array> = stream[Symbol.asyncIterator]();
  for (let next = await bytes.next().catch(failed); next.done !== true; ) {
    yield decoded(decoder, next.value);
    next = await bytes.next().catch(failed);
  }
  yield decoded(decoder);
}
