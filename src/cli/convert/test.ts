import { testMapping } from '../../convert/mapping-tests/test-mapping.ts';
import { mappingTestText } from '../../convert/mapping-tests/test-text.ts';
import { hasErrors } from '../../issues/issue.ts';
import type { Call } from '../command.ts';
import { UsageError } from '../failure.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { catalogueOf, mappingFile, mappingIn, writeFound } from './named-mapping.ts';

/**
 * The tests that a mapping carries, with their results to standard output, as text or with
 * `--format json` as one JSON object. Exit code 1 where one fails, or there is none.
 */
export async function convertTest(call: Call): Promise<number> {
  const { io, files, options } = call;
  const name = mappingFile(call, 'test');
  if (files.length > 0) throw new UsageError('--test takes the tests of the mapping and no file');
  const mapping = await mappingIn(call, name);
  if (mapping === undefined) return 1;
  const run = testMapping(mapping, catalogueOf(call));
  await writeIssues(io, issueFormatOf(options), { input: name }, run.issues);
  if (hasErrors(run.issues)) return 1;
  await writeFound(call, run, mappingTestText);
  const failed = run.results.some(({ failures }) => failures.length > 0);
  return failed || run.results.length === 0 ? 1 : 0;
}
