import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { hasErrors, type Issue } from '../../issues/issue.ts';
import { missingColumns } from '../csv/from-csv.ts';
import { issue } from '../issue.ts';
import { isTable } from '../mapping/source.ts';
import { createConverter } from './convert-batch.ts';
import { findInputs, joined } from './input/inputs.ts';
import type { BulkIo, BulkOptions } from './options.ts';
import {
  type Checkpoint,
  checkpointFile,
  fingerprintOf,
  isLeftover,
  readCheckpoint,
  removeCheckpoint,
  writeWhole,
} from './output/checkpoint.ts';
import { cutBack } from './output/sinks.ts';
import { type Summary, summaryText } from './output/summary.ts';
import { emptyTally } from './output/tally.ts';
import { builtWorker, localPool, workerPool } from './pool.ts';
import { runConversion } from './run.ts';

/** What became of a run. */
export interface BulkResult {
  /** None where the run did not begin: the mapping is wrong, or the folder is not free. */
  readonly summary?: Summary;
  /** About the mapping, the inputs and the folder; those of single exams stand in `issues.ndjson`. */
  readonly issues: readonly Issue[];
}

/**
 * Converts files to files. In `out` stand the results (`bundles.ndjson`, a file for each resource
 * type, or `exams.ndjson`), `quarantine.ndjson` with every exam that could not be converted,
 * `issues.ndjson`, and a summary as text and JSON. A run that was stopped goes on with `resume` and
 * ends with the same bytes as one that was not.
 *
 * @param options Inputs, mapping, output folder and number of workers; see {@link BulkOptions}.
 * @param io A clock for rates, and where progress is shown.
 * @returns The summary, and issues about mapping and inputs. No summary where nothing was
 *   converted.
 * @throws {Error} For a full disk or a worker that died, never for data.
 * @example
 * const settings = { mapping, inputs: ['archive'], out: 'converted', jobs: 4 };
 * const result = await convertFiles(settings, { now: Date.now });
 */
export async function convertFiles(options: BulkOptions, io: BulkIo): Promise<BulkResult> {
  const converter = await createConverter(options);
  const { convert, conversion } = converter;
  if (convert === undefined || conversion === undefined) {
    return { issues: converter.issues };
  }
  const { plan, source } = conversion;
  const found = await findInputs(options.inputs);
  const issues = [...converter.issues, ...found.issues];
  const fingerprint = fingerprintOf(options, found.inputs);
  const start = await startOf(options, fingerprint);
  if ('problem' in start) return { issues: [...issues, start.problem] };
  if (start.done !== undefined) {
    await removeCheckpoint(options.out);
    return { summary: start.done, issues };
  }
  await cutBack(options.out, start.checkpoint.lengths);
  const jobs = Math.max(1, Math.floor(options.jobs ?? 1));
  const pool =
    jobs === 1 ? localPool(convert) : workerPool(jobs, options, io.worker ?? builtWorker);
  try {
    const tally = await runConversion({
      options,
      io,
      pool,
      conversion,
      inputs:
        conversion.joined === true && options.inputKind !== 'quarantine'
          ? joined(found.inputs)
          : found.inputs,
      startIssues: start.checkpoint.told ? [] : issues,
      checkpoint: start.checkpoint,
      checkFirst: ({ header }) =>
        header === undefined || plan === undefined || !isTable(source)
          ? []
          : missingColumns(header, plan),
    });
    const summary: Summary = {
      format: 'face-neck-conversion/1',
      inputs: found.inputs.map(({ name }) => name),
      ...tally,
    };
    await writeWhole(join(options.out, 'summary.txt'), summaryText(summary));
    await writeWhole(
      join(options.out, 'summary.json'),
      `${JSON.stringify(summary, undefined, 2)}\n`,
    );
    await removeCheckpoint(options.out);
    return { summary, issues };
  } finally {
    await pool.close();
  }
}

interface Start {
  readonly checkpoint: Checkpoint;
  readonly done?: undefined;
}

/** Where to begin: afresh, at the checkpoint of a stopped run, or not at all. */
async function startOf(
  { out, resume }: BulkOptions,
  fingerprint: string,
): Promise<Start | { readonly done: Summary } | { readonly problem: Issue }> {
  const fresh: Checkpoint = {
    format: 'face-neck-progress/1',
    fingerprint,
    input: 0,
    items: 0,
    told: false,
    lengths: {},
    tally: emptyTally,
  };
  const files = await filesIn(out);
  if (files.length === 0) return { checkpoint: fresh };
  if (resume !== true) {
    return {
      problem: issue('invalid-value', ['out'], { reason: 'out-not-empty' }),
    };
  }
  if (files.every(isLeftover)) return { checkpoint: fresh };
  const checkpoint = await readCheckpoint(out);
  if (checkpoint === undefined) {
    const done = await readSummary(out);
    if (done !== undefined) return { done };
    const problem = issue('invalid-value', ['out'], {
      reason: 'out-no-run',
      code: checkpointFile,
    });
    return { problem };
  }
  if (checkpoint.fingerprint !== fingerprint) {
    return {
      problem: issue('invalid-value', ['out'], { reason: 'out-other-run' }),
    };
  }
  return { checkpoint };
}

/** The summary of a run that came to its end. */
async function readSummary(folder: string): Promise<Summary | undefined> {
  try {
    // Written by convertFiles, whole or not at all.
    return JSON.parse(await readFile(join(folder, 'summary.json'), 'utf8')) as Summary;
  } catch {
    return undefined;
  }
}

async function filesIn(folder: string): Promise<string[]> {
  try {
    return await readdir(folder);
  } catch {
    return [];
  }
}

/**
 * Tells whether a run needs someone to look at it.
 *
 * @param result From `convertFiles`.
 * @returns True where nothing was converted, an issue about the run is an error, or an exam is in
 *   quarantine.
 * @example
 * const settings = { mapping, inputs: ['archive'], out: 'converted' };
 * const failed = hasFailed(await convertFiles(settings, { now: Date.now }));
 */
export function hasFailed({ summary, issues }: BulkResult): boolean {
  return summary === undefined || hasErrors(issues) || summary.exams.quarantined > 0;
}
