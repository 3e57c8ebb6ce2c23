/// <reference types="node" />
import { resolve } from 'node:path';
import { suggestFromFile } from '../../convert/bulk/scan/suggest-from-file.ts';
import { suggestionText } from '../../convert/suggest/suggestion-text.ts';
import { hasErrors } from '../../issues/issue.ts';
import type { Call } from '../command.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { catalogueOf } from './named-mapping.ts';
import { sampleFile, statedSource } from './stated-source.ts';

/**
 * A first mapping from a sample to standard output, with what is open as comments in it and as issues
 * on standard error. A mapping that is given may hold no more than its `source`. Exit code 1 as long
 * as the mapping cannot be used as it is.
 */
export async function convertSuggest(call: Call): Promise<number> {
  const { io, options } = call;
  const file = sampleFile(call, 'suggest');
  const stated = await statedSource(call);
  if (stated === undefined) return 1;
  const suggestion = await suggestFromFile(resolve(io.cwd, file), {
    ...stated,
    ...catalogueOf(call),
  });
  await io.out(suggestionText(suggestion));
  await writeIssues(io, issueFormatOf(options), { input: file }, suggestion.issues);
  return hasErrors(suggestion.issues) ? 1 : 0;
}
