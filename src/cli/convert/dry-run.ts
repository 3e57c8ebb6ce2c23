/// <reference types="node" />
import { resolve } from 'node:path';
import { sampleOfFile, sourceOf } from '../../convert/bulk/scan/sample-of-file.ts';
import { hasErrors } from '../../issues/issue.ts';
import { toDryRun } from '../../report/dry-run/to-dry-run.ts';
import { textOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { catalogueOf, mappingFile, mappingIn } from './named-mapping.ts';
import { sampleFile } from './stated-source.ts';

/**
 * A page with what a conversion of the file would make, to standard output; with `--against` what that
 * differs from what another mapping makes. Exit code 1 where an exam would be set aside.
 */
export async function convertDryRun(call: Call): Promise<number> {
  const { io } = call;
  const file = sampleFile(call, 'dry-run');
  const mapping = await mappingIn(call, mappingFile(call, 'dry-run'));
  const earlier = textOption(call.options, 'against');
  const against = earlier === undefined ? undefined : await mappingIn(call, earlier);
  if (mapping === undefined || (earlier !== undefined && against === undefined)) return 1;
  const { text, issues } = await sampleOfFile(resolve(io.cwd, file), sourceOf(mapping));
  const page = toDryRun(text, mapping, {
    ...catalogueOf(call),
    ...(against !== undefined && { against }),
  });
  const all = [...issues, ...page.issues];
  await writeIssues(io, issueFormatOf(call.options), { input: file }, all);
  await io.out(page.html);
  const aside = page.run.exams.some(({ exam }) => exam === undefined);
  return aside || page.run.exams.length === 0 || hasErrors(all) ? 1 : 0;
}
