/// <reference types="node" />
import { resolve } from 'node:path';
import { suggestFromFile } from '../../convert/bulk/suggest-from-file.ts';
import type { Source } from '../../convert/mapping/source.ts';
import { suggestionText } from '../../convert/suggest/suggestion-text.ts';
import { hasErrors } from '../../issues/issue.ts';
import { textOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import { UsageError } from '../failure.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { readMappingFile } from './read-mapping.ts';

/**
 * A first mapping from a sample to standard output, with what is open as comments in it and as issues
 * on standard error. A mapping that is given may hold no more than its `source`. Exit code 1 as long
 * as the mapping cannot be used as it is.
 */
export async function convertSuggest({ io, files, options }: Call): Promise<number> {
  const [file, ...more] = files;
  if (file === undefined || file === '-' || more.length > 0) {
    throw new UsageError('--suggest takes one named file as its sample');
  }
  const format = issueFormatOf(options);
  const mapping = textOption(options, 'mapping');
  const stated = mapping === undefined ? undefined : await readMappingFile(io, mapping);
  if (stated !== undefined && hasErrors(stated.issues)) {
    await writeIssues(io, format, { input: mapping ?? '' }, stated.issues);
    return 1;
  }
  const source = sourceOf(stated?.value);
  const suggestion = await suggestFromFile(resolve(io.cwd, file), source && { source });
  await io.out(suggestionText(suggestion));
  await writeIssues(io, format, { input: file }, suggestion.issues);
  return hasErrors(suggestion.issues) ? 1 : 0;
}

const syntaxes: ReadonlySet<unknown> = new Set(['csv', 'hl7v2', 'xml', 'cda']);

/** The suggestion checks the rest of it. */
function sourceOf(mapping: unknown): Source | undefined {
  if (typeof mapping !== 'object' || mapping === null || !('source' in mapping)) return undefined;
  const { source } = mapping;
  if (typeof source !== 'object' || source === null || !('syntax' in source)) return undefined;
  const isXml = source.syntax === 'xml';
  if (isXml && !('exam' in source && typeof source.exam === 'string')) return undefined;
  return syntaxes.has(source.syntax) ? (source as Source) : undefined; // its syntax is known
}
