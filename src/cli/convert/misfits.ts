/// <reference types="node" />
import { resolve } from 'node:path';
import { misfitsOfFile } from '../../convert/bulk/misfits-of-file.ts';
import type { WrittenMapping } from '../../convert/mapping/mapping.ts';
import { misfitsText } from '../../convert/scan/misfits-text.ts';
import { hasErrors } from '../../issues/issue.ts';
import { textOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import { UsageError } from '../failure.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { readMappingFile } from './read-mapping.ts';
import { sampleFile } from './stated-source.ts';

/**
 * What of a mapping does not fit a new export, to standard output, as text or with `--format json` as
 * one JSON object. Exit code 1 where a name of the mapping is not found.
 */
export async function convertMisfits(call: Call): Promise<number> {
  const { io, options } = call;
  const file = sampleFile(call, 'misfits');
  const name = textOption(options, 'mapping');
  if (name === undefined) throw new UsageError('--misfits needs --mapping FILE');
  const { value, issues } = await readMappingFile(io, name);
  await writeIssues(io, issueFormatOf(options), { input: name }, issues);
  if (value === undefined) return 1;
  // `misfits` checks it before it is used.
  const found = await misfitsOfFile(resolve(io.cwd, file), value as WrittenMapping);
  const isText = textOption(options, 'format') !== 'json';
  await writeIssues(io, issueFormatOf(options), { input: name }, found.issues);
  if (hasErrors(found.issues)) return 1;
  await io.out(isText ? misfitsText(found) : `${JSON.stringify(found)}\n`);
  return found.missing.length > 0 || found.headless ? 1 : 0;
}
