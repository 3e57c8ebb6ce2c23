/// <reference types="node" />
import { resolve } from 'node:path';
import { sampleOfFile } from '../../convert/bulk/scan/sample-of-file.ts';
import { hasErrors } from '../../issues/issue.ts';
import { toReview } from '../../report/review/to-review.ts';
import { flagOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { catalogueOf } from './named-mapping.ts';
import { sampleFile, statedSource } from './stated-source.ts';

/**
 * The page on which a person makes a mapping from proposals, to standard output. What is open stands on
 * the page; standard error has what could not be read. Exit code 1 where there is nothing to review.
 */
export async function convertReview(call: Call): Promise<number> {
  const { io, options } = call;
  const file = sampleFile(call, 'review');
  const stated = await statedSource(call);
  if (stated === undefined) return 1;
  const { text, issues } = await sampleOfFile(resolve(io.cwd, file), stated.source);
  const page = toReview(text, {
    ...stated,
    ...catalogueOf(call),
    values: flagOption(options, 'values'),
  });
  const format = issueFormatOf(options);
  await writeIssues(io, format, { input: file }, issues);
  if (page.fields === 0) {
    await writeIssues(io, format, { input: file }, page.issues);
    return 1;
  }
  await io.out(page.html);
  return hasErrors(issues) ? 1 : 0;
}
