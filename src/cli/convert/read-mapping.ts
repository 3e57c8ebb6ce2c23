/// <reference types="node" />
import { createReadStream } from 'node:fs';
import { basename, resolve } from 'node:path';
import { TextDecoder } from 'node:util';
import { parseMappingText } from '../../convert/prepare/read-mapping.ts';
import { failure, issue, type Outcome } from '../../issues/issue.ts';
import { fileFailure } from '../failure.ts';
import type { CliIo } from '../io.ts';

/** A mapping of field names and words is some kilobytes. */
const MOST_BYTES = 16 * 1024 * 1024;

/** The data of a mapping file, in which comments may stand; `-` is standard input. */
export async function readMappingFile(io: CliIo, file: string): Promise<Outcome<unknown>> {
  const source = file === '-' ? io.stdin : createReadStream(resolve(io.cwd, file));
  const pieces: Uint8Array[] = [];
  let length = 0;
  try {
    for await (const piece of source) {
      pieces.push(piece);
      length += piece.length;
      if (length > MOST_BYTES) {
        return failure([issue('too-large', [basename(file)], { reason: 'mapping' })]);
      }
    }
  } catch (thrown) {
    throw fileFailure('read', file, thrown);
  }
  try {
    return parseMappingText(
      new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(pieces)),
    );
  } catch {
    return failure([issue('undeclared-encoding', [basename(file)], { reason: 'mapping' })]);
  }
}
