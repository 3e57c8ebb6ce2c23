/// <reference types="node" />
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { fileFailure } from '../failure.ts';
import type { CliIo } from '../io.ts';

/** The text of a file that an option names. */
export async function textFile({ cwd }: Pick<CliIo, 'cwd'>, file: string): Promise<string> {
  try {
    return await readFile(resolve(cwd, file), 'utf8');
  } catch (thrown) {
    throw fileFailure('read', file, thrown);
  }
}
