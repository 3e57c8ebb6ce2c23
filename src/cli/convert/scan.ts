/// <reference types="node" />
import { resolve } from 'node:path';
import { scanFile } from '../../convert/bulk/scan/scan-file.ts';
import { scanText } from '../../convert/scan/scan-text.ts';
import { flagOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import { catalogueOf, writeFound } from './named-mapping.ts';
import { sampleFile, statedSource } from './stated-source.ts';

/**
 * What an export holds, to standard output, as text or with `--format json` as one JSON object. Values
 * stand in it with `--values` alone. Exit code 1 where nothing could be read.
 */
export async function convertScan(call: Call): Promise<number> {
  const { io, options } = call;
  const file = sampleFile(call, 'scan');
  const stated = await statedSource(call);
  if (stated === undefined) return 1;
  const values = flagOption(options, 'values');
  const scan = await scanFile(resolve(io.cwd, file), {
    ...stated,
    ...catalogueOf(call),
    values,
  });
  await writeFound(call, scan, scanText);
  return scan.fields.length === 0 ? 1 : 0;
}
