import { undecidedIssue } from '../../clinic/undecided.ts';
import type { ExportOptions } from '../../export/options.ts';
import type { Issue } from '../../issues/issue.ts';
import { textOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { textFile } from './text-file.ts';

/**
 * Whether bundles to be stored have no identity, because the clinic has not decided on one; it is told
 * once, at its line, and not for each exam.
 */
export async function lacksIdentity(
  { io, options, clinic }: Call,
  { bundleType, identity }: Pick<ExportOptions, 'bundleType' | 'identity'>,
): Promise<boolean> {
  if (bundleType !== 'transaction' || identity !== undefined) return false;
  if (clinic?.undecided.includes('identity') !== true) return false;
  // Brings the validator with it, which few runs need here.
  const { locatedInJson } = await import('../../validate/text/validate-text.ts');
  const file = textOption(options, 'clinic') ?? '';
  const issues: readonly Issue[] = [undecidedIssue('identity')];
  const located = locatedInJson(await textFile(io, file))(issues);
  await writeIssues(io, issueFormatOf(options), { input: file }, located);
  return true;
}
