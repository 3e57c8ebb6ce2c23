import type { WrittenMapping } from '../../convert/mapping/mapping.ts';
import { testMapping } from '../../convert/mapping-tests/test-mapping.ts';
import { mappingTestText } from '../../convert/mapping-tests/test-text.ts';
import { hasErrors } from '../../issues/issue.ts';
import { textOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import { UsageError } from '../failure.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { readMappingFile } from './read-mapping.ts';

/**
 * The tests that a mapping carries, with their results to standard output, as text or with
 * `--format json` as one JSON object. Exit code 1 where one fails, or there is none.
 */
export async function convertTest({ io, files, options }: Call): Promise<number> {
  const name = textOption(options, 'mapping');
  if (name === undefined) throw new UsageError('--test needs --mapping FILE');
  if (files.length > 0) throw new UsageError('--test takes the tests of the mapping and no file');
  const format = issueFormatOf(options);
  const { value, issues } = await readMappingFile(io, name);
  await writeIssues(io, format, { input: name }, issues);
  if (value === undefined) return 1;
  // `testMapping` checks it before it is used.
  const run = testMapping(value as WrittenMapping);
  await writeIssues(io, format, { input: name }, run.issues);
  if (hasErrors(run.issues)) return 1;
  const isText = textOption(options, 'format') !== 'json';
  await io.out(isText ? mappingTestText(run) : `${JSON.stringify(run)}\n`);
  const failed = run.results.some(({ failures }) => failures.length > 0);
  return failed || run.results.length === 0 ? 1 : 0;
}
