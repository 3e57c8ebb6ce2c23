/// <reference types="node" />
import { access } from 'node:fs/promises';
import { resolve } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { convertFiles, hasFailed } from '../../convert/bulk/convert-files.ts';
import type { BulkOptions } from '../../convert/bulk/options.ts';
import { summaryText } from '../../convert/bulk/output/summary.ts';
import { flagOption, textOption } from '../arguments.ts';
import type { Call, Command } from '../command.ts';
import { confirmedIn } from '../convert/confirmed.ts';
import { mappingIn } from '../convert/named-mapping.ts';
import { bulkIo, kinds, runSettings } from '../convert/settings.ts';
import { fileFailure, UsageError } from '../failure.ts';
import { lacksIdentity } from '../input/lacks-identity.ts';
import { linesOption } from '../lines/answer-lines.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { formatOutOption, wantsXml } from '../output/resource-text.ts';
import { bundleOptions, clinicOption, exportOptionsOf, formatOption } from '../shared-options.ts';

export const command: Command = {
  argumentsText: '[FILE|FOLDER ...] --mapping FILE',
  description:
    'Converts older exports (CSV, XLSX, fixed width, XML, HL7 v2, CDA, JSON, FHIR) by a mapping that says what each field means. ' +
    'Files, folders, .gz and .zip are taken. With --out a folder gets the results, what could not ' +
    'be converted, the issues and a summary, and a run that was stopped can go on. Without it ' +
    'the results go to standard output, one per line. With --lines it works for a program that hands ' +
    'out records: each line is JSON, {"raw": "text of one exam", "id": ...}, for CSV with "header", and ' +
    'is answered at once with one line.',
  options: {
    mapping: {
      type: 'text',
      value: 'FILE',
      help: 'The mapping, as JSON; comments are allowed',
    },
    words: {
      type: 'text',
      value: 'FILE',
      help: 'More words of the mapping, as CSV with the columns table, word and meaning',
    },
    to: {
      type: 'text',
      values: [...kinds.keys()],
      fallback: 'bundles',
      help: 'What to write: bundles, a file for each type of resource (with --out), or exams',
    },
    ...clinicOption,
    ...bundleOptions,
    ...formatOutOption,
    out: { type: 'text', value: 'FOLDER', help: 'Folder for the results; it must be empty or new' },
    jobs: {
      type: 'text',
      value: 'N',
      fallback: '1',
      help: 'Threads to convert in; 0 for all cores',
    },
    resume: { type: 'flag', help: 'Resume a stopped run in --out' },
    quarantine: {
      type: 'flag',
      help: 'The inputs are mended quarantine files of an earlier run',
    },
    ledger: { type: 'flag', help: 'Write where each field went, one line per exam' },
    ...linesOption,
    suggest: {
      type: 'flag',
      help: 'Write a first mapping from FILE as a sample, with what could not be placed',
    },
    scan: {
      type: 'flag',
      help:
        'Report what FILE holds: fields, how they are filled, likely dates and sides, what each could ' +
        'be; with --format json as JSON',
    },
    misfits: {
      type: 'flag',
      help: 'Report what in the mapping does not fit FILE, a new export, and what looks renamed',
    },
    review: {
      type: 'flag',
      help: 'Write a page on which a person confirms or changes what FILE could be, and saves the mapping',
    },
    'dry-run': {
      type: 'flag',
      help:
        'Write a page with what FILE would become: source beside result, coverage, leftovers, what ' +
        'would be set aside and the cure. It holds patient data',
    },
    propose: {
      type: 'flag',
      help:
        'Write what the notes could say as findings, one proposal per line, for a person to confirm: with ' +
        '"confirmed": {"by": "name", "at": "moment"} in its line. It holds patient data',
    },
    'review-proposals': {
      type: 'flag',
      help:
        'Write a page on which a person confirms, changes or rejects what the notes could say, and ' +
        'saves the file for --confirmed; with --confirmed, what is decided there is not asked again. ' +
        'It holds patient data',
    },
    confirmed: {
      type: 'text',
      value: 'FILE',
      help:
        'Proposals of --propose or --review-proposals; those that are confirmed become statements, ' +
        'with who and when',
    },
    against: {
      type: 'text',
      value: 'FILE',
      help: 'With --dry-run: an earlier mapping, to show what the change changes',
    },
    test: { type: 'flag', help: 'Run the tests that the mapping carries' },
    values: {
      type: 'flag',
      help: 'With --scan and --review: show common values, which can be patient data',
    },
    ...formatOption,
  },
  examples: [
    ['convert checks.csv --mapping mapping.json > bundles.ndjson', 'one file'],
    ['convert --test --mapping mapping.json', 'whether the mapping does what its tests say'],
    ['convert checks.csv --mapping mapping.json --dry-run > page.html', 'what it would become'],
    [
      'convert archive/ --mapping mapping.json --out converted --jobs 4',
      'a folder, in four threads',
    ],
    ['convert archive/ --mapping mapping.json --out converted --resume', 'resumed after a stop'],
    ['convert sample.csv --scan', 'what an export holds'],
    ['convert new.csv --misfits --mapping mapping.json', 'whether an export has changed'],
    ['convert sample.csv --review --values > review.html', 'a page to make a mapping on'],
    ['convert sample.csv --suggest > mapping.json', 'a mapping to start from'],
    ['convert letters/ --mapping mapping.json --propose > said.ndjson', 'what letters say'],
    [
      'convert letters/ --mapping mapping.json --review-proposals > said.html',
      'a page to confirm it on',
    ],
    [
      'convert letters/ --mapping mapping.json --confirmed confirmed.ndjson --out done',
      'with what a person has confirmed of it',
    ],
  ],
  files: { least: 0, most: Number.POSITIVE_INFINITY },
  run: async (call) => {
    const { io, options } = call;
    checkFormatOut(call);
    const other = [...ofSamples].find(([name]) => flagOption(options, name));
    if (other !== undefined && !flagOption(options, 'lines')) return (await other[1]())(call);
    const file = textOption(options, 'mapping');
    if (file === undefined) throw new UsageError('convert needs --mapping FILE');
    const mapping = await mappingIn(call, file);
    if (mapping === undefined) return 1;
    const confirmed = await confirmedIn(call);
    if (confirmed === undefined) return 1;
    if (
      textOption(options, 'to') !== 'exams' &&
      (await lacksIdentity(call, exportOptionsOf(call)))
    ) {
      return 1;
    }
    if (flagOption(options, 'lines')) {
      const { convertByLine } = await import('../convert/by-line.ts');
      return convertByLine(call, mapping, confirmed);
    }
    await needInputs(call);
    keepMemoryLow();
    const settings = { ...runSettings(call, mapping), ...confirmed };
    if (flagOption(options, 'propose')) {
      return (await import('../convert/propose.ts')).convertPropose(call, settings, bulkIo(io));
    }
    if (flagOption(options, 'review-proposals')) {
      const { convertReviewProposals } = await import('../convert/propose.ts');
      return convertReviewProposals(call, settings, bulkIo(io));
    }
    const out = textOption(options, 'out');
    if (out !== undefined) {
      return convertToFolder(call, { ...settings, out: resolve(io.cwd, out) });
    }
    return (await import('../convert/to-stdout.ts')).convertToStdout(call, settings, bulkIo(io));
  },
};

/**
 * What is done with one file as a sample, or with the mapping alone. Each is loaded when it is asked for:
 * half of the start of a conversion would be modules that it does not use.
 */
const ofSamples: ReadonlyMap<string, () => Promise<(call: Call) => Promise<number>>> = new Map([
  ['scan', async () => (await import('../convert/scan.ts')).convertScan],
  ['misfits', async () => (await import('../convert/misfits.ts')).convertMisfits],
  ['review', async () => (await import('../convert/review.ts')).convertReview],
  ['dry-run', async () => (await import('../convert/dry-run.ts')).convertDryRun],
  ['test', async () => (await import('../convert/test.ts')).convertTest],
  ['suggest', async () => (await import('../convert/suggest.ts')).convertSuggest],
]);

/**
 * Without this V8 lets its heap grow up to fourfold between two collections, and beyond on a busy
 * machine: a million rows took 213 MB, with it 130 MB, in the same time.
 */
function keepMemoryLow(): void {
  setFlagsFromString('--heap-growing-percent=40');
}

/** NDJSON, which the files of a folder are, is JSON; an exam is not a resource. */
function checkFormatOut({ options }: Call): void {
  if (!wantsXml(options)) return;
  if (textOption(options, 'out') !== undefined || textOption(options, 'to') === 'exams') {
    throw new UsageError('--format-out xml goes only with bundles on standard output');
  }
}

/** A run over thousands of files goes on past one that fails; a name that is wrong stops it before. */
async function needInputs({ io, files }: Call): Promise<void> {
  for (const file of files) {
    if (file === '-') continue;
    await access(resolve(io.cwd, file)).catch((thrown: unknown) => {
      throw fileFailure('read', file, thrown);
    });
  }
}

async function convertToFolder({ io, options }: Call, settings: BulkOptions): Promise<number> {
  if (settings.inputs.length === 0 || settings.inputs.includes('-')) {
    throw new UsageError('with --out, convert needs named files or folders');
  }
  const result = await convertFiles(settings, bulkIo(io));
  await writeIssues(io, issueFormatOf(options), { input: 'convert' }, result.issues);
  if (result.summary !== undefined) await io.out(summaryText(result.summary));
  return hasFailed(result) ? 1 : 0;
}
