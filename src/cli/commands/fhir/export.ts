import { type CutOptions, cutBundle } from '../../../deliver/cut.ts';
import type { BundleType, ExportOptions } from '../../../export/options.ts';
import { prepareExport } from '../../../export/to-bundle.ts';
import type { Issue, Outcome } from '../../../issues/issue.ts';
import type { Exam } from '../../../model/exam.ts';
import { parseExam } from '../../../model/parse-exam.ts';
import { flagOption, type OptionTable, type OptionValues, textOption } from '../../arguments.ts';
import type { Choices, Command } from '../../command.ts';
import { deidentifierOf, deidentifyOptions } from '../../deidentified.ts';
import { UsageError } from '../../failure.ts';
import {
  type DocumentStep,
  eachDocument,
  type StepResult,
  standsAlone,
} from '../../input/each-document.ts';
import { lacksIdentity } from '../../input/lacks-identity.ts';
import { parseOptionsOf } from '../../input/read-exam.ts';
import { languageOf } from '../../language.ts';
import { linesOption } from '../../lines/answer-lines.ts';
import { apartOption, exportByLine } from '../../lines/export-lines.ts';
import { formatOutOption, resourceWriter } from '../../output/resource-text.ts';
import {
  bundleOptions,
  clinicOption,
  exportOptionsOf,
  issueOptions,
  outOption,
} from '../../shared-options.ts';
import { clinicChecks } from '../exam/check.ts';

const cutOptions: OptionTable = {
  most: {
    type: 'text',
    value: 'NUMBER',
    help: 'With --bundle transaction: several bundles of at most this many entries, one per line',
  },
  page: {
    type: 'flag',
    help: 'Put the page for people into the report, for systems that show nothing else of it',
  },
  as: {
    type: 'text',
    values: ['transaction', 'batch'],
    help: 'With --most: transactions, or batches for servers without transactions',
  },
};

function cutOptionsOf(options: OptionValues, type: BundleType | undefined): CutOptions | undefined {
  const most = textOption(options, 'most');
  const as = textOption(options, 'as');
  if (most === undefined && as === undefined) return undefined;
  if (most === undefined || !/^[1-9]\d{0,5}$/.test(most) || type !== 'transaction') {
    throw new UsageError('--most needs a whole number from 1, and --bundle transaction');
  }
  return { most: Number(most), as: as === 'batch' ? 'batch' : 'transaction' };
}

/** The page is loaded only where it is asked for. */
async function pageOf(choices: Choices): Promise<Pick<ExportOptions, 'presentedForms'>> {
  if (!flagOption(choices.options, 'page')) return {};
  const { htmlForm } = await import('../../../report/index.ts');
  const { displays: language, words } = languageOf(choices);
  return { presentedForms: htmlForm({ language, words, checks: clinicChecks(choices.clinic) }) };
}

/** One text where everything could be written. */
function textOf(written: readonly Outcome<string>[], issues: readonly Issue[]): StepResult {
  const texts = written.flatMap(({ value }) => value ?? []);
  return {
    ...(texts.length > 0 && texts.length === written.length && { text: texts.join('') }),
    issues: [...issues, ...written.flatMap((one) => one.issues)],
  };
}

export const command: Command = {
  argumentsText: '[FILE ...]',
  description:
    'Turns exams into FHIR bundles. Each input is an exam as JSON, or one exam per line; without a ' +
    'file it is read from standard input. Several exams give one bundle per line. With --lines, a ' +
    'program hands out the records: each line is answered at once by one line.',
  options: {
    ...clinicOption,
    ...bundleOptions,
    ...cutOptions,
    ...linesOption,
    ...apartOption,
    ...deidentifyOptions,
    ...formatOutOption,
    ...outOption,
    ...issueOptions,
  },
  examples: [
    ['export exam.json --out bundle.json', 'one exam as an R4 collection'],
    ['export exam.json --fhir r5 --bundle document', 'as an R5 document'],
    ['export exam.json --clinic clinic.json', 'as the clinic has decided'],
    ['export exam.json --format-out xml --out bundle.xml', 'as FHIR XML'],
    [
      'export exam.json --bundle transaction --identity URI --most 50',
      'bundles of at most 50 entries, one per line, to be sent in this order',
    ],
    [
      'export exam.json --bundle transaction --identity URI --patient reference',
      'to be sent to a server that knows the patient',
    ],
    ['export year.ndjson --deidentify secret.txt', 'without what names people and places'],
    ['export < exams.ndjson > bundles.ndjson', 'many exams, one per line'],
  ],
  files: { least: 0, most: Number.POSITIVE_INFINITY },
  run: async (call) => {
    const hidden = await deidentifierOf(call);
    const options = {
      ...exportOptionsOf(call),
      ...(await pageOf(call)),
      ...hidden?.filing,
    };
    if (await lacksIdentity(call, options)) return 1;
    if (flagOption(call.options, 'lines')) return exportByLine(call, options);
    const parse = parseOptionsOf(call);
    const write = await resourceWriter(call);
    const exporter = prepareExport(options);
    const cut = cutOptionsOf(call.options, options.bundleType);
    const run: DocumentStep['run'] = async (value, document) => {
      // Each of them checks the form before it looks into it.
      const { value: exam, issues } =
        hidden === undefined ? parseExam(value, parse) : hidden.exam(value as Exam);
      if (exam === undefined) return { issues };
      const made = exporter.ok ? exporter.value(exam) : exporter;
      if (made.value === undefined) return { issues: [...issues, ...made.issues] };
      const before = [...issues, ...made.issues];
      if (cut !== undefined) {
        const { value: bundles = [], issues: further } = cutBundle(made.value, cut);
        return textOf(
          bundles.map((bundle) => write(bundle, true)),
          [...before, ...further],
        );
      }
      return textOf([write(made.value, !standsAlone(call, document))], before);
    };
    const code = await eachDocument(call, { run });
    await hidden?.end();
    return code;
  },
};
