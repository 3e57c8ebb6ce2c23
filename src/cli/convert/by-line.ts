import { convertLines } from '../../convert/bulk/convert-lines.ts';
import type { ConvertSettings } from '../../convert/bulk/options.ts';
import { hasErrors } from '../../issues/issue.ts';
import { flagOption, textOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import { UsageError } from '../failure.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { recordSettings } from './settings.ts';

/** Options of whole runs: a line knows nothing of the others. */
const ofRuns = [
  'out',
  'jobs',
  'resume',
  'quarantine',
  'ledger',
  'suggest',
  'scan',
  'misfits',
  'review',
  'dry-run',
  'against',
  'test',
  'propose',
  'values',
];

/**
 * A record a line in, a line out, for a program that hands out the work. What is wrong with a record
 * stands in its line; standard error tells of the mapping alone. Exit code 1 when a record could not
 * be converted.
 */
export async function convertByLine(
  call: Call,
  mapping: unknown,
  confirmed: Pick<ConvertSettings, 'confirmed'>,
): Promise<number> {
  const { io, files, options } = call;
  const other = ofRuns.find((name) => flagOption(options, name));
  if (other !== undefined) throw new UsageError(`--lines does not go with --${other}`);
  if (textOption(options, 'format-out') === 'xml') {
    throw new UsageError('--lines gives JSON alone');
  }
  if (files.some((file) => file !== '-')) {
    throw new UsageError('with --lines, convert reads standard input alone');
  }
  if (io.interactive) throw new UsageError('nothing comes from standard input');
  const settings = { ...recordSettings(call, mapping), ...confirmed };
  const result = await convertLines(io.stdin, settings, io.out);
  await writeIssues(io, issueFormatOf(options), { input: 'convert' }, result.issues);
  return hasErrors(result.issues) || result.converted < result.read ? 1 : 0;
}
