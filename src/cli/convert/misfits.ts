/// <reference types="node" />
import { resolve } from 'node:path';
import { misfitsOfFile } from '../../convert/bulk/scan/misfits-of-file.ts';
import { isFieldMapping } from '../../convert/mapping/is-fhir.ts';
import { misfitsText } from '../../convert/scan/misfits-text.ts';
import { hasErrors } from '../../issues/issue.ts';
import type { Call } from '../command.ts';
import { UsageError } from '../failure.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { catalogueOf, mappingFile, mappingIn, writeFound } from './named-mapping.ts';
import { sampleFile } from './stated-source.ts';

/**
 * What of a mapping does not fit a new export, to standard output, as text or with `--format json` as
 * one JSON object. Exit code 1 where a name of the mapping is not found.
 */
export async function convertMisfits(call: Call): Promise<number> {
  const { io, options } = call;
  const file = sampleFile(call, 'misfits');
  const name = mappingFile(call, 'misfits');
  const mapping = await mappingIn(call, name);
  if (mapping === undefined) return 1;
  if (!isFieldMapping(mapping)) {
    throw new UsageError('--misfits takes a mapping of fields, not one for FHIR');
  }
  const found = await misfitsOfFile(resolve(io.cwd, file), mapping, catalogueOf(call));
  await writeIssues(io, issueFormatOf(options), { input: name }, found.issues);
  if (hasErrors(found.issues)) return 1;
  await writeFound(call, found, misfitsText);
  return found.missing.length > 0 || found.headless ? 1 : 0;
}
