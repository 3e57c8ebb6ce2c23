import { toBundle } from '../../export/to-bundle.ts';
import { parseExam } from '../../model/parse-exam.ts';
import type { Command } from '../command.ts';
import { type DocumentStep, eachDocument, jsonDocument } from '../each-document.ts';
import { flagOption } from '../options.ts';
import { bundleOptions, exportOptionsOf, issueOptions, outOption } from '../shared-options.ts';

export const command: Command = {
  argumentsText: '[FILE ...]',
  description:
    'Turns exams into FHIR bundles. Each input is an exam as JSON, or one exam a line; without a ' +
    'file it is read from standard input. Several exams give one bundle a line.',
  options: { ...bundleOptions, ...outOption, ...issueOptions },
  examples: [
    ['export exam.json --out bundle.json', 'one exam as an R4 collection'],
    ['export exam.json --fhir r5 --bundle document', 'as an R5 document'],
    ['export < exams.ndjson > bundles.ndjson', 'many exams, one a line'],
  ],
  files: { least: 0, most: Number.POSITIVE_INFINITY },
  run: async (call) => {
    const options = exportOptionsOf(call.options);
    const includeValues = flagOption(call.options, 'include-values');
    const run: DocumentStep['run'] = async (value, document) => {
      const { value: exam, issues } = parseExam(value, { includeValues });
      if (exam === undefined) return { issues };
      const made = toBundle(exam, options);
      return {
        ...(made.value !== undefined && { text: jsonDocument(call, document, made.value) }),
        issues: [...issues, ...made.issues],
      };
    };
    return eachDocument(call, { run });
  },
};
