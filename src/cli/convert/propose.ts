/// <reference types="node" />
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { convertFiles, hasFailed } from '../../convert/bulk/convert-files.ts';
import type { BulkIo, ConvertSettings } from '../../convert/bulk/options.ts';
import type { Mapping } from '../../convert/mapping/mapping.ts';
import { withPreset } from '../../convert/mapping/presets/index.ts';
import { proposalLines } from '../../convert/proposals/lines.ts';
import { proposeFindings } from '../../convert/proposals/propose.ts';
import type { Exam } from '../../model/exam.ts';
import { toProposalReview } from '../../report/proposals/to-proposal-review.ts';
import { englishProposalReviewWords } from '../../report/proposals/words/english.ts';
import { germanProposalReviewWords } from '../../report/proposals/words/german.ts';
import { builtInCatalogue } from '../../terminology/catalogue.ts';
import type { Call } from '../command.ts';
import { documents } from '../input/documents.ts';
import { languageOf } from '../language.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { catalogueOf } from './named-mapping.ts';
import type { RunSettings } from './settings.ts';
import { exists, tellIssues, withStdin } from './to-stdout.ts';

/**
 * What the notes of the converted exams could say as findings, a proposal a line to standard output, for a
 * person to confirm. Nothing else is written. Exit code 1 where an exam was set aside.
 */
export function convertPropose(call: Call, settings: RunSettings, bulkIo: BulkIo): Promise<number> {
  return withExams(call, settings, bulkIo, async (exams, headings) => {
    for await (const exam of exams) await writeProposals(call, exam, headings);
  });
}

/**
 * The page on which a person confirms what the notes could say, to standard output. What `--confirmed`
 * holds is decided already. Exit code 1 where an exam was set aside.
 */
export function convertReviewProposals(
  call: Call,
  { confirmed, ...settings }: RunSettings & Pick<ConvertSettings, 'confirmed'>,
  bulkIo: BulkIo,
): Promise<number> {
  return withExams(call, settings, bulkIo, async (made, headings) => {
    const exams: Exam[] = [];
    for await (const exam of made) exams.push(exam);
    const { displays } = languageOf(call);
    const { html, issues } = toProposalReview(exams, {
      ...catalogueOf(call),
      ...(confirmed !== undefined && { decided: confirmed }),
      ...(headings !== undefined && { headings }),
      language: displays,
      words: displays.tag === 'de' ? germanProposalReviewWords : englishProposalReviewWords,
    });
    await writeIssues(call.io, issueFormatOf(call.options), { input: 'convert' }, issues);
    await call.io.out(html);
  });
}

type Use = (exams: AsyncIterable<Exam>, headings: Mapping['headings']) => Promise<void>;

/** Hands out the exams that a run makes. */
async function withExams(
  call: Call,
  settings: RunSettings,
  bulkIo: BulkIo,
  use: Use,
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
    await use(examsIn(call, join(out, 'exams.ndjson')), headingsOf(settings.mapping, call));
    if (result.summary !== undefined) await tellIssues(io, format, out);
    return hasFailed(result) ? 1 : 0;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The exams of a file that a run has written; a run without results has made none. */
async function* examsIn({ io }: Call, file: string): AsyncGenerator<Exam> {
  if (!(await exists(file))) return;
  for await (const { text } of documents(io, [file])) {
    if (text !== '') yield JSON.parse(text) as Exam; // written by the run itself
  }
}

async function writeProposals(
  call: Call,
  exam: Exam,
  headings: Mapping['headings'],
): Promise<void> {
  const { io, options } = call;
  const { value, issues } = proposeFindings(exam, {
    ...catalogueOf(call),
    ...(headings !== undefined && { headings }),
  });
  if (value === undefined)
    await writeIssues(io, issueFormatOf(options), { input: exam.id }, issues);
  else await io.out(proposalLines(value));
}

/** The headings of a mapping that a run has read. */
function headingsOf(mapping: unknown, { clinic }: Call): Mapping['headings'] {
  const whole = withPreset(mapping, clinic?.catalogue ?? builtInCatalogue) as Partial<Mapping>; // the run has checked it
  return whole.headings;
}
