import type { ConvertSettings } from '../../convert/bulk/options.ts';
import { parseProposals } from '../../convert/proposals/lines.ts';
import { textOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import { textFile } from '../input/text-file.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';

/** The proposals of `--confirmed`, none where it is not given; undefined where they cannot be read, which is told. */
export async function confirmedIn({
  io,
  options,
}: Call): Promise<Pick<ConvertSettings, 'confirmed'> | undefined> {
  const file = textOption(options, 'confirmed');
  if (file === undefined) return {};
  const { value, issues } = parseProposals(await textFile(io, file));
  await writeIssues(io, issueFormatOf(options), { input: file }, issues);
  return value === undefined ? undefined : { confirmed: value };
}
