import { issue } from '../../../issues/issue.ts';
import type { Remainder } from '../../../read/bundle/remainder.ts';
import { fromBundle } from '../../../read/from-bundle.ts';
import { flagOption, textOption } from '../../arguments.ts';
import type { Command } from '../../command.ts';
import { type DocumentStep, eachDocument, jsonDocument } from '../../input/each-document.ts';
import {
  clinicOption,
  identityOf,
  identityOption,
  issueOptions,
  outOption,
} from '../../shared-options.ts';

export const command: Command = {
  argumentsText: '[FILE ...]',
  description:
    'Reads the exam that a bundle holds, of FHIR R4, R4B or R5. What the bundle says beyond the ' +
    'exam is reported as a warning, so that nothing is lost silently.',
  options: {
    exam: {
      type: 'text',
      value: 'ID',
      help: 'Which exam to read, where a bundle holds several',
    },
    ...clinicOption,
    ...identityOption,
    ...outOption,
    ...issueOptions,
  },
  examples: [
    ['read bundle.json', 'the exam as JSON'],
    ['read bundle.json | face-neck-fhir export --fhir r5', 'from R4 to R5'],
    ['read < bundles.ndjson > exams.ndjson', 'many bundles, one per line'],
  ],
  files: { least: 0, most: Number.POSITIVE_INFINITY },
  run: async (call) => {
    const includeValues = flagOption(call.options, 'include-values');
    const exam = textOption(call.options, 'exam');
    const run: DocumentStep['run'] = async (value, document) => {
      const read = fromBundle(value, {
        ...call.clinic?.read,
        includeValues,
        ...identityOf(call),
        ...(exam !== undefined && { exam }),
      });
      return {
        ...(read.value !== undefined && { text: jsonDocument(call, document, read.value) }),
        issues: [
          ...read.issues,
          // Without an exam the errors say what is wrong, and the remainder is the whole bundle.
          ...(read.value === undefined ? [] : read.remainder.flatMap(remainderIssue)),
        ],
      };
    };
    return eachDocument(call, { run });
  },
};

function remainderIssue({ path, what, kind }: Remainder): ReturnType<typeof issue>[] {
  if (kind === 'bookkeeping') return [];
  return [issue('not-in-exam', path, { reason: 'part', property: what }, { severity: 'warning' })];
}
