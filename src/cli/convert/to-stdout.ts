/// <reference types="node" />

import { createReadStream, createWriteStream } from 'node:fs';
import { access, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { convertFiles, hasFailed } from '../../convert/bulk/convert-files.ts';
import type { BulkIo, BulkOptions } from '../../convert/bulk/options.ts';
import { append } from '../../data/append.ts';
import { fromJson } from '../../fhir/json/from-json.ts';
import type { Issue } from '../../issues/issue.ts';
import type { Call } from '../command.ts';
import { UsageError } from '../failure.ts';
import { documents } from '../input/documents.ts';
import type { CliIo } from '../io.ts';
import { type IssueFormat, issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { resourceWriter, wantsXml } from '../output/resource-text.ts';

/**
 * A conversion whose results go to standard output and whose issues go to standard error. It runs in
 * a folder of its own, so that memory stays bounded however large the inputs are.
 */
export async function convertToStdout(
  call: Call,
  settings: Omit<BulkOptions, 'out'>,
  bulkIo: BulkIo,
): Promise<number> {
  const { io, options } = call;
  if (settings.to === 'resources') throw new UsageError('--to resources needs --out FOLDER');
  if (settings.resume === true) throw new UsageError('--resume needs --out FOLDER');
  if (settings.inputs.length === 0 && io.interactive) {
    throw new UsageError('no file is named and nothing comes from standard input');
  }
  const folder = await mkdtemp(join(tmpdir(), 'face-neck-fhir-'));
  try {
    const format = issueFormatOf(options);
    const inputs = await withStdin(io, folder, settings.inputs);
    const out = join(folder, 'results');
    const result = await convertFiles({ ...settings, inputs, out }, bulkIo);
    await writeIssues(io, format, { input: 'convert' }, result.issues);
    if (result.summary !== undefined) {
      const file = join(out, settings.to === 'exams' ? 'exams.ndjson' : 'bundles.ndjson');
      const unwritten = wantsXml(options) ? await writeAsXml(call, file) : await copyOut(io, file);
      await tellIssues(io, format, out);
      await writeIssues(io, format, { input: 'convert' }, unwritten);
      if (unwritten.length > 0) return 1;
    }
    return hasFailed(result) ? 1 : 0;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

export async function withStdin(
  io: CliIo,
  folder: string,
  inputs: readonly string[],
): Promise<readonly string[]> {
  if (inputs.length > 0 && !inputs.includes('-')) return inputs;
  const file = join(folder, 'stdin');
  await pipeline(io.stdin, createWriteStream(file));
  return inputs.length === 0 ? [file] : inputs.map((input) => (input === '-' ? file : input));
}

async function copyOut(io: CliIo, file: string): Promise<readonly Issue[]> {
  if (!(await exists(file))) return [];
  for await (const text of createReadStream(file, 'utf8')) await io.out(String(text));
  return [];
}

/** Each bundle as XML on a line of its own; what XML cannot hold is told. */
async function writeAsXml(call: Call, file: string): Promise<Issue[]> {
  const { io } = call;
  const write = await resourceWriter(call);
  const issues: Issue[] = [];
  if (!(await exists(file))) return issues;
  for await (const { text } of documents(io, [file])) {
    const written = write(fromJson(text).value, true);
    if (written.value !== undefined) await io.out(written.value);
    append(issues, written.issues);
  }
  return issues;
}

/** A run without results, or without issues, makes no file for them. */
export function exists(file: string): Promise<boolean> {
  return access(file).then(
    () => true,
    () => false,
  );
}

type IssueLine = Issue & { readonly file?: string };

/** Issues of exams that were converted, then of those that were not, each under its input. */
export async function tellIssues(io: CliIo, format: IssueFormat, out: string): Promise<void> {
  for await (const line of linesOf(io, join(out, 'issues.ndjson'))) {
    const { file, ...found } = line as IssueLine; // written by the run itself
    await writeIssues(io, format, { input: basename(file ?? 'convert') }, [found]);
  }
  for await (const line of linesOf(io, join(out, 'quarantine.ndjson'))) {
    const { file, issues } = line as { file: string; issues: Issue[] }; // likewise
    await writeIssues(io, format, { input: basename(file) }, issues);
  }
}

async function* linesOf(io: CliIo, file: string): AsyncGenerator<unknown, void, undefined> {
  if (!(await exists(file))) return;
  for await (const { text } of documents(io, [file])) if (text !== '') yield JSON.parse(text);
}
