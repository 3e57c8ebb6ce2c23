import { createHash } from 'node:crypto';
import { open, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Input } from '../input/inputs.ts';
import type { BulkOptions } from '../options.ts';
import { seenFile } from '../seen-ids.ts';
import type { Tally } from './tally.ts';

export const checkpointFile = 'progress.json';

/** Where a run stands: everything before it is on disk, nothing after it counts. */
export interface Checkpoint {
  readonly format: 'face-neck-progress/1';
  /** Digest of what decides the output; a run with another one cannot go on here. */
  readonly fingerprint: string;
  /** Input that is being read, and how many of its units and problems are done. */
  readonly input: number;
  readonly items: number;
  /** What is to be said at the start has been said. */
  readonly told: boolean;
  readonly lengths: { readonly [file: string]: number };
  readonly tally: Tally;
}

/** Settings that decide what is written; how it is worked at does not count. */
const whatCounts = [
  'mapping',
  'to',
  'fhirVersion',
  'bundleType',
  'snomed',
  'language',
  'canonicalBase',
  'identity',
  'masterData',
  'transaction',
  'detail',
  'target',
  'laterality',
  'profiles',
  'filing',
  'additions',
  'codeMap',
  'ledger',
  'inputKind',
] as const satisfies readonly (keyof BulkOptions)[];

/** Digest of the settings and inputs. */
export function fingerprintOf(options: BulkOptions, inputs: readonly Input[]): string {
  const settings = Object.fromEntries(whatCounts.map((name) => [name, options[name]]));
  const files = inputs.map(({ name, size }) => [name, size]);
  return createHash('sha256')
    .update(JSON.stringify([settings, files]))
    .digest('hex');
}

export async function writeCheckpoint(folder: string, checkpoint: Checkpoint): Promise<void> {
  await writeWhole(join(folder, checkpointFile), JSON.stringify(checkpoint));
}

/** Written beside, forced to disk and renamed: at no moment is there half a file. */
export async function writeWhole(target: string, text: string): Promise<void> {
  const file = await open(target + unfinished, 'w');
  try {
    await file.writeFile(text);
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(target + unfinished, target);
}

const unfinished = '.new';

/** What a run leaves that was stopped before its first checkpoint: nothing that counts. */
export function isLeftover(file: string): boolean {
  return file === seenFile || file === checkpointFile + unfinished;
}

/** Undefined where there is none. */
export async function readCheckpoint(folder: string): Promise<Checkpoint | undefined> {
  let text: string;
  try {
    text = await readFile(join(folder, checkpointFile), 'utf8');
  } catch {
    return undefined;
  }
  return JSON.parse(text) as Checkpoint; // written by writeCheckpoint, whole or not at all
}

/** Takes away what only a stopped run needs. */
export async function removeCheckpoint(folder: string): Promise<void> {
  for (const file of [checkpointFile, checkpointFile + unfinished, seenFile]) {
    await rm(join(folder, file), { force: true });
  }
}
