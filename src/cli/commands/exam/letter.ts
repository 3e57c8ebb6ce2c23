import type { LetterReader } from '../../../letters/letter.ts';
import { readers } from '../../../letters/letter.ts';
import { toLetter } from '../../../letters/to-letter.ts';
import { englishLetterWords } from '../../../letters/words/english.ts';
import { germanLetterWords } from '../../../letters/words/german.ts';
import { letterHtml, letterText } from '../../../letters/write-letter.ts';
import { textOption } from '../../arguments.ts';
import type { Command } from '../../command.ts';
import { UsageError } from '../../failure.ts';
import { readExam } from '../../input/read-exam.ts';
import { languageOf, languageOption } from '../../language.ts';
import { issueFormatOf, writeIssues } from '../../output/issue-writer.ts';
import { pdfCallOf, pdfOptions, writePage } from '../../output/pdf.ts';
import { clinicOption, issueOptions, outOption } from '../../shared-options.ts';
import { clinicChecks } from './check.ts';

export const command: Command = {
  argumentsText: '[FILE]',
  description:
    'Writes a letter from an exam: to a specialist, the general practitioner, the patient in plain ' +
    'words, or the employer, who is told no finding. It states nothing that the exam does not, and is ' +
    'a draft: a person reads it over and signs it.',
  options: {
    to: {
      type: 'text',
      values: readers,
      help: 'Who the letter is for',
    },
    share: {
      type: 'text',
      value: 'KEY',
      repeated: true,
      help: 'With --to employer: a plan item that may be told, where the patient has agreed to share',
    },
    form: {
      type: 'text',
      values: ['text', 'html'],
      fallback: 'text',
      help: 'Plain text or a page',
    },
    ...clinicOption,
    ...languageOption,
    ...outOption,
    ...pdfOptions,
    ...issueOptions,
  },
  examples: [
    ['letter exam.json --to specialist', 'a referral letter as plain text'],
    ['letter exam.json --to patient --language de --form html --out letter.html', 'to the patient'],
  ],
  files: { least: 0, most: 1 },
  run: async (call) => {
    const { io, options, clinic } = call;
    const [file = '-'] = call.files;
    const to = readers.find(
      (reader): reader is LetterReader => reader === textOption(options, 'to'),
    );
    if (to === undefined) throw new UsageError(`--to is needed: ${readers.join(', ')}`);
    if (file === '-' && io.interactive) {
      throw new UsageError('no file is named and nothing comes from standard input');
    }
    const pdf = pdfCallOf(options);
    const format = issueFormatOf(options);
    const exam = await readExam(call, file);
    if (exam === undefined) return 1;
    const { displays, words } = languageOf(call);
    const letterWords = displays.tag === 'de' ? germanLetterWords : englishLetterWords;
    const share = options.get('share') ?? [];
    const { value, issues } = toLetter(exam, to, {
      language: displays,
      words,
      letterWords,
      share,
      // A letter states what the exam does; prompts are for the page.
      checks: { ...clinicChecks(clinic), ruleSets: [] },
    });
    await writeIssues(io, format, { input: file }, issues);
    if (value === undefined) return 1;
    const html = letterHtml(value, letterWords);
    const asHtml = textOption(options, 'form') === 'html';
    await writePage(io, options, html, pdf, asHtml ? html : letterText(value, letterWords));
    return 0;
  },
};
