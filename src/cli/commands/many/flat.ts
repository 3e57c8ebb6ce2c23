import { fromJson } from '../../../fhir/json/from-json.ts';
import { flatHead, flatLine } from '../../../flat/flat-csv.ts';
import { flatColumns } from '../../../flat/flat-row.ts';
import { toFlat } from '../../../flat/to-flat.ts';
import { hasErrors } from '../../../issues/issue.ts';
import type { Exam } from '../../../model/exam.ts';
import { builtInCatalogue } from '../../../terminology/catalogue.ts';
import { inLanguage } from '../../../terminology/languages/language.ts';
import { flagOption, textOption } from '../../arguments.ts';
import type { Command } from '../../command.ts';
import { deidentifierOf, deidentifyOptions } from '../../deidentified.ts';
import { eachDocument } from '../../input/each-document.ts';
import { withFolders } from '../../input/folders.ts';
import { languageOf, languageOption } from '../../language.ts';
import { answerLines, checkLinesCall, linesOption } from '../../lines/answer-lines.ts';
import { clinicOption, issueOptions, outOption } from '../../shared-options.ts';

export const command: Command = {
  argumentsText: '[FILE|FOLDER ...]',
  description:
    'Writes the statements of exams as rows for analysis, one per statement (for sensation, one per modality), ' +
    'with the same columns for every kind. Only rows whose column said is states say that something is ' +
    'there. In CSV, a text that a spreadsheet could take for a formula has a quote in front, to be ' +
    'removed on reading. The rows hold patient data. With --lines, each exam is answered at once by one ' +
    'line with its rows.',
  options: {
    to: { type: 'text', values: ['csv', 'ndjson'], fallback: 'csv', help: 'Form of the rows' },
    'without-words': { type: 'flag', help: 'Leave out notes and other words of the examiner' },
    columns: { type: 'flag', help: 'Say what each column holds, and read nothing' },
    ...linesOption,
    ...clinicOption,
    ...deidentifyOptions,
    ...languageOption,
    ...outOption,
    ...issueOptions,
  },
  examples: [
    ['flat exams/ --out statements.csv', 'a table over a folder'],
    ['flat year.ndjson --to ndjson', 'one row per line, for a database'],
    ['flat exams/ --deidentify secret.txt', 'without what names people and places'],
  ],
  files: { least: 0, most: Number.POSITIVE_INFINITY },
  run: async (call) => {
    const { io, options } = call;
    if (flagOption(options, 'columns')) {
      await io.out(
        Object.entries(flatColumns)
          .map(([name, what]) => `${name}\t${what}\n`)
          .join(''),
      );
      return 0;
    }
    const settings = {
      catalogue: inLanguage(call.clinic?.catalogue ?? builtInCatalogue, languageOf(call).displays),
      withoutWords: flagOption(options, 'without-words'),
      includeValues: flagOption(options, 'include-values'),
    };
    if (flagOption(options, 'lines')) {
      checkLinesCall(call, ['out', 'to', 'deidentify']);
      return answerLines(call, (text) => {
        const json = fromJson(text);
        if (hasErrors(json.issues)) return { issues: json.issues };
        const { value: rows, issues } = toFlat(json.value as Exam, settings); // likewise checked there
        return { issues: [...json.issues, ...issues], ...(rows && { result: rows }) };
      });
    }
    const hidden = await deidentifierOf(call);
    const csv = textOption(options, 'to') !== 'ndjson';
    let head = csv ? flatHead : '';
    const code = await eachDocument(
      { ...call, files: await withFolders(io, call.files) },
      {
        run: async (value) => {
          // toFlat checks the form before it looks into it.
          const given = hidden?.exam(value as Exam);
          if (given?.value === undefined && given !== undefined) return { issues: given.issues };
          const { value: rows, issues } = toFlat(given?.value ?? (value as Exam), settings);
          if (rows === undefined) return { issues };
          const lines = rows.map((row) => (csv ? flatLine(row) : `${JSON.stringify(row)}\n`));
          const text = head + lines.join('');
          head = '';
          return { text, issues };
        },
      },
    );
    await hidden?.end();
    return code;
  },
};
