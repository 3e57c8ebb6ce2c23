/// <reference types="node" />
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { ConvertSettings } from '../../convert/bulk/options.ts';
import { parseProposals } from '../../convert/proposals/lines.ts';
import { textOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import { fileFailure } from '../failure.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';

/** The proposals of `--confirmed`, none where it is not given; undefined where they cannot be read, which is told. */
export async function confirmedIn({
  io,
  options,
}: Call): Promise<Pick<ConvertSettings, 'confirmed'> | undefined> {
  const file = textOption(options, 'confirmed');
  if (file === undefined) return {};
  let text: string;
  try {
    text = await readFile(resolve(io.cwd, file), 'utf8');
  } catch (thrown) {
    throw fileFailure('read', file, thrown);
  }
  const { value, issues } = parseProposals(text);
  await writeIssues(io, issueFormatOf(options), { input: file }, issues);
  return value === undefined ? undefined : { confirmed: value };
}
