/// <reference types="node" />
import { resolve } from 'node:path';
import { sampleOfFile } from '../../convert/bulk/sample-of-file.ts';
import type { WrittenMapping } from '../../convert/mapping/mapping.ts';
import type { Source } from '../../convert/mapping/source.ts';
import { hasErrors } from '../../issues/issue.ts';
import { toDryRun } from '../../report/dry-run/to-dry-run.ts';
import { textOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import { UsageError } from '../failure.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { readMappingFile } from './read-mapping.ts';
import { sampleFile } from './stated-source.ts';

/**
 * A page with what a conversion of the file would make, to standard output; with `--against` what that
 * differs from what another mapping makes. Exit code 1 where an exam would be set aside.
 */
export async function convertDryRun(call: Call): Promise<number> {
  const { io } = call;
  const file = sampleFile(call, 'dry-run');
  const mapping = await mappingOf(call, 'mapping');
  if (textOption(call.options, 'mapping') === undefined) {
    throw new UsageError('--dry-run needs --mapping FILE');
  }
  const against = await mappingOf(call, 'against');
  if (mapping === undefined) return 1;
  if (textOption(call.options, 'against') !== undefined && against === undefined) return 1;
  // Whatever a preset says of it, the encoding is the user's to state.
  const source = mapping.source as Source | undefined;
  const { text, issues } = await sampleOfFile(resolve(io.cwd, file), source);
  const page = toDryRun(text, mapping, against === undefined ? {} : { against });
  const all = [...issues, ...page.issues];
  await writeIssues(io, issueFormatOf(call.options), { input: file }, all);
  await io.out(page.html);
  const aside = page.run.exams.some(({ exam }) => exam === undefined);
  return aside || page.run.exams.length === 0 || hasErrors(all) ? 1 : 0;
}

/** The mapping of an option; undefined where it is not given, or cannot be read, which is told. */
async function mappingOf(
  { io, options }: Call,
  option: 'mapping' | 'against',
): Promise<WrittenMapping | undefined> {
  const name = textOption(options, option);
  if (name === undefined) return undefined;
  const { value, issues } = await readMappingFile(io, name);
  await writeIssues(io, issueFormatOf(options), { input: name }, issues);
  // The dry run checks it before it is used.
  return value as WrittenMapping | undefined;
}
