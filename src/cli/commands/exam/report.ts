import type { Exam } from '../../../model/exam.ts';
import { toHtml } from '../../../report/to-html.ts';
import { flagOption } from '../../arguments.ts';
import type { Call, Command } from '../../command.ts';
import { UsageError } from '../../failure.ts';
import { readExam } from '../../input/read-exam.ts';
import { languageOf, languageOption } from '../../language.ts';
import { pdfCallOf, pdfOptions, writePage } from '../../output/pdf.ts';
import { clinicOption, issueOptions, outOption } from '../../shared-options.ts';
import { checkOptionsOf, priorOptions, ruleSetOption, settingsOption } from './check.ts';

export const command: Command = {
  argumentsText: '[FILE]',
  description:
    'Prints an exam as an HTML page for people: conclusion, what was found and not found, what was ' +
    'not examined and why, and what nothing was said about. The page loads nothing from elsewhere.',
  options: {
    ...clinicOption,
    ...ruleSetOption,
    ...settingsOption,
    ...priorOptions,
    prior: {
      type: 'text',
      value: 'FILE',
      repeated: true,
      help: 'An earlier exam to compare with; of several, the latest, and small charts with the figures of all',
    },
    appendix: {
      type: 'flag',
      help: 'Print everything that is not on the first pages as an appendix',
    },
    ...languageOption,
    ...outOption,
    ...pdfOptions,
    ...issueOptions,
  },
  examples: [
    ['report exam.json --out exam.html', 'a page to open in a browser'],
    ['report exam.json --prior last-year.json --out exam.html', 'with what changed'],
    [
      'report exam.json --prior 2024.json --prior 2023.json --out exam.html',
      'with the course of figures',
    ],
    ['report exam.json --language de --out exam.html', 'in German'],
    ['report exam.json --pdf exam.pdf --browser /usr/bin/chromium', 'printed by a browser'],
  ],
  files: { least: 0, most: 1 },
  run: async (call) => {
    const { io, options } = call;
    const [file = '-'] = call.files;
    if (file === '-' && io.interactive) {
      throw new UsageError('no file is named and nothing comes from standard input');
    }
    const pdf = pdfCallOf(options);
    const rest = new Map([...options].filter(([name]) => name !== 'prior'));
    const settings = await checkOptionsOf({ ...call, options: rest });
    const priors = await priorExams(call);
    const exam = await readExam(call, file);
    if (exam === undefined || settings === undefined || priors === undefined) return 1;
    const [prior, ...earlier] = priors;
    const checks = { ...settings, ...(prior !== undefined && { prior }) };
    const { displays, words, issues } = languageOf(call);
    await writePage(
      io,
      options,
      toHtml(exam, {
        checks,
        earlier,
        appendix: flagOption(options, 'appendix'),
        language: displays,
        words,
        ...(issues && { issues }),
      }),
      pdf,
    );
    return 0;
  },
};

/** The exams of the option `prior`, latest first; undefined where one cannot be read, which has been told. */
async function priorExams(call: Call): Promise<readonly Exam[] | undefined> {
  const exams: Exam[] = [];
  for (const file of call.options.get('prior') ?? []) {
    const exam = await readExam(call, file);
    if (exam === undefined) return undefined;
    exams.push(exam);
  }
  return exams.sort((a, b) => (a.performed.start < b.performed.start ? 1 : -1));
}
