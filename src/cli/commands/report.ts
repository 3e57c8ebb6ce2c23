import { toHtml } from '../../report/to-html.ts';
import { flagOption, textOption } from '../arguments.ts';
import type { Command } from '../command.ts';
import { UsageError } from '../failure.ts';
import { readExam } from '../input/read-exam.ts';
import { languageOf, languageOption } from '../language.ts';
import { issueFormatOf } from '../output/issue-writer.ts';
import { outputTo } from '../output/output.ts';
import { issueOptions, outOption } from '../shared-options.ts';
import { checkOptionsOf, priorOptions, ruleSetOption, settingsOption } from './check.ts';

export const command: Command = {
  argumentsText: '[FILE]',
  description:
    'Prints an exam as an HTML page for people: conclusion, what was found and not found, what was ' +
    'not examined and why, and what nothing was said about. The page loads nothing from elsewhere.',
  options: {
    ...ruleSetOption,
    ...settingsOption,
    ...priorOptions,
    ...languageOption,
    ...outOption,
    ...issueOptions,
  },
  examples: [
    ['report exam.json --out exam.html', 'a page to open in a browser'],
    ['report exam.json --prior last-year.json --out exam.html', 'with what changed'],
    ['report exam.json --language de --out exam.html', 'in German'],
  ],
  files: { least: 0, most: 1 },
  run: async (call) => {
    const { io, options } = call;
    const [file = '-'] = call.files;
    if (file === '-' && io.interactive) {
      throw new UsageError('no file is named and nothing comes from standard input');
    }
    const checks = await checkOptionsOf(call);
    const exam = await readExam(io, file, {
      format: issueFormatOf(options),
      includeValues: flagOption(options, 'include-values'),
    });
    if (exam === undefined || checks === undefined) return 1;
    const output = outputTo(io, textOption(options, 'out'));
    const { displays, words } = languageOf(options);
    await output.write(toHtml(exam, { checks, language: displays, words }));
    await output.finish();
    return 0;
  },
};
