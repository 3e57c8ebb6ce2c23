import { toBundle } from '../../export/to-bundle.ts';
import { parseExam } from '../../model/parse-exam.ts';
import { flagOption } from '../arguments.ts';
import type { Command } from '../command.ts';
import { type DocumentStep, eachDocument, standsAlone } from '../input/each-document.ts';
import { formatOutOption, resourceWriter } from '../output/resource-text.ts';
import { bundleOptions, exportOptionsOf, issueOptions, outOption } from '../shared-options.ts';

export const command: Command = {
  argumentsText: '[FILE ...]',
  description:
    'Turns exams into FHIR bundles. Each input is an exam as JSON, or one exam a line; without a ' +
    'file it is read from standard input. Several exams give one bundle a line.',
  options: { ...bundleOptions, ...formatOutOption, ...outOption, ...issueOptions },
  examples: [
    ['export exam.json --out bundle.json', 'one exam as an R4 collection'],
    ['export exam.json --fhir r5 --bundle document', 'as an R5 document'],
    ['export exam.json --format-out xml --out bundle.xml', 'as FHIR XML'],
    ['export < exams.ndjson > bundles.ndjson', 'many exams, one a line'],
  ],
  files: { least: 0, most: Number.POSITIVE_INFINITY },
  run: async (call) => {
    const options = exportOptionsOf(call.options);
    const includeValues = flagOption(call.options, 'include-values');
    const write = await resourceWriter(call.options);
    const run: DocumentStep['run'] = async (value, document) => {
      const { value: exam, issues } = parseExam(value, { includeValues });
      if (exam === undefined) return { issues };
      const made = toBundle(exam, options);
      if (made.value === undefined) return { issues: [...issues, ...made.issues] };
      const written = write(made.value, !standsAlone(call, document));
      return {
        ...(written.value !== undefined && { text: written.value }),
        issues: [...issues, ...made.issues, ...written.issues],
      };
    };
    return eachDocument(call, { run });
  },
};
