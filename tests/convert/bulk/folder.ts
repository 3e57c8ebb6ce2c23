import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { convertFiles } from '../../../src/convert/bulk/convert-files.ts';
import type { BulkIo, BulkOptions } from '../../../src/convert/bulk/options.ts';

/** Worker threads run from source here, since tests do not build. */
export const io: BulkIo = {
  now: () => 0,
  worker: new URL('./worker-from-source.mjs', import.meta.url),
};

/** A folder that is gone when the tests of the file are over. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'convert-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Names and digests of the files of a folder. */
export function contents(folder: string): { readonly [file: string]: string } {
  return Object.fromEntries(
    readdirSync(folder)
      .sort()
      .map((file) => [
        file,
        createHash('sha256')
          .update(readFileSync(join(folder, file)))
          .digest('hex'),
      ]),
  );
}

export function lines(folder: string, file: string): readonly unknown[] {
  const text = readFileSync(join(folder, file), 'utf8');
  return text
    .split('\n')
    .slice(0, -1)
    .map((line): unknown => JSON.parse(line));
}

export async function convert(options: BulkOptions): ReturnType<typeof convertFiles> {
  return convertFiles(options, io);
}
