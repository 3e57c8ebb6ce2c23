import { convertLines } from '../../convert/bulk/convert-lines.ts';
import type { ConvertSettings } from '../../convert/bulk/options.ts';
import { hasErrors } from '../../issues/issue.ts';
import { textOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import { exitCode } from '../exit-code.ts';
import { UsageError } from '../failure.ts';
import { checkLinesCall } from '../lines/answer-lines.ts';
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
 * stands in its line; standard error tells of the mapping alone, with which nothing is read.
 */
export async function convertByLine(
  call: Call,
  mapping: unknown,
  confirmed: Pick<ConvertSettings, 'confirmed'>,
): Promise<number> {
  const { io, options } = call;
  checkLinesCall(call, ofRuns);
  if (textOption(options, 'format-out') === 'xml') {
    throw new UsageError('--lines writes only JSON');
  }
  const settings = { ...recordSettings(call, mapping), ...confirmed };
  const result = await convertLines(io.stdin, settings, io.out);
  await writeIssues(io, issueFormatOf(options), { input: 'convert' }, result.issues);
  if (hasErrors(result.issues)) return exitCode.errors;
  return result.converted < result.read ? exitCode.keptBack : exitCode.clean;
}
