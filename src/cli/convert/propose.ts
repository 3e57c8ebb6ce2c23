/// <reference types="node" />
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { convertFiles, hasFailed } from '../../convert/bulk/convert-files.ts';
import type { BulkIo } from '../../convert/bulk/options.ts';
import type { Mapping } from '../../convert/mapping/mapping.ts';
import { withPreset } from '../../convert/mapping/presets/index.ts';
import { proposalLines } from '../../convert/proposals/lines.ts';
import { proposeFindings } from '../../convert/proposals/propose.ts';
import type { Exam } from '../../model/exam.ts';
import { builtInCatalogue } from '../../terminology/catalogue.ts';
import type { Call } from '../command.ts';
import { documents } from '../input/documents.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { catalogueOf } from './named-mapping.ts';
import type { RunSettings } from './settings.ts';
import { exists, tellIssues, withStdin } from './to-stdout.ts';

/**
 * What the notes of the converted exams could say as findings, a proposal a line to standard output, for a
 * person to confirm. Nothing else is written. Exit code 1 where an exam was set aside.
 */
export async function convertPropose(
  call: Call,
  settings: RunSettings,
  bulkIo: BulkIo,
): Promise<number> {
  const { io, options } = call;
  const folder = await mkdtemp(join(tmpdir(), 'face-neck-fhir-'));
  try {
    const format = issueFormatOf(options);
    const inputs = await withStdin(io, folder, settings.inputs);
    const out = join(folder, 'results');
    const run = { ...settings, inputs, out, to: 'exams', ledger: false } as const;
    const result = await convertFiles(run, bulkIo);
    await writeIssues(io, format, { input: 'convert' }, result.issues);
    const headings = headingsOf(settings.mapping, call);
    await writeProposals(call, join(out, 'exams.ndjson'), headings);
    if (result.summary !== undefined) await tellIssues(io, format, out);
    return hasFailed(result) ? 1 : 0;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** Proposals for each exam of a file; a run without results has made none. */
async function writeProposals(
  call: Call,
  file: string,
  headings: Mapping['headings'],
): Promise<void> {
  const { io, options } = call;
  if (!(await exists(file))) return;
  for await (const { text } of documents(io, [file])) {
    if (text === '') continue;
    const exam = JSON.parse(text) as Exam; // written by the run itself
    const { value, issues } = proposeFindings(exam, {
      ...catalogueOf(call),
      ...(headings !== undefined && { headings }),
    });
    if (value === undefined)
      await writeIssues(io, issueFormatOf(options), { input: exam.id }, issues);
    else await io.out(proposalLines(value));
  }
}

/** The headings of a mapping that a run has read. */
function headingsOf(mapping: unknown, { clinic }: Call): Mapping['headings'] {
  const whole = withPreset(mapping, clinic?.catalogue ?? builtInCatalogue) as Partial<Mapping>; // the run has checked it
  return whole.headings;
}
