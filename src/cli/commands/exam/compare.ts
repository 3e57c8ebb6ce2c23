import { checkExam } from '../../../checks/check-exam.ts';
import { toJson } from '../../../fhir/json/to-json.ts';
import { hasErrors } from '../../../issues/issue.ts';
import { flagOption, textOption } from '../../arguments.ts';
import type { Command } from '../../command.ts';
import { readExam } from '../../input/read-exam.ts';
import { compareText } from '../../output/compare-text.ts';
import { issueFormatOf, writeIssues } from '../../output/issue-writer.ts';
import { outputTo } from '../../output/output.ts';
import { clinicOption, issueOptions, outOption } from '../../shared-options.ts';
import { clinicChecks } from './check.ts';

/** Issues of a comparison that concern the pair; those of the later exam alone belong to `check`. */
const aboutPair: ReadonlySet<string | number> = new Set(['options', 'prior']);

export const command: Command = {
  argumentsText: 'EARLIER LATER',
  description:
    'Says what changed between two exams of one person. Lesions are matched by their tracking key, ' +
    'all else by what it is about. Silence is neither "gone" nor "new", and without figures taken ' +
    'the same way nothing is called unchanged.',
  options: {
    'same-patient': {
      type: 'flag',
      help: 'Both are of the same person although their records do not say so',
    },
    to: { type: 'text', values: ['text', 'json'], fallback: 'text', help: 'Form of the result' },
    ...clinicOption,
    ...outOption,
    ...issueOptions,
  },
  examples: [
    ['compare 2024.json 2025.json', 'changes, for people'],
    ['compare 2024.json 2025.json --to json', 'every pair, as JSON'],
  ],
  files: { least: 2, most: 2 },
  run: async (call) => {
    const { io, files, options, clinic } = call;
    const format = issueFormatOf(options);
    const [earlier = '', later = ''] = files;
    const prior = await readExam(call, earlier);
    const exam = await readExam(call, later);
    if (prior === undefined || exam === undefined) return 1;
    const checks = clinicChecks(clinic);
    const { comparisons, issues } = checkExam(exam, {
      ...checks,
      prior,
      ...(flagOption(options, 'same-patient') && { samePatient: 'assumed' }),
    });
    const told = issues.filter(({ path }) => aboutPair.has(path[0] ?? ''));
    await writeIssues(io, format, { input: later }, told);
    if (hasErrors(told)) return 1;
    const output = outputTo(io, textOption(options, 'out'));
    const asJson = textOption(options, 'to') === 'json';
    await output.write(
      asJson
        ? `${toJson(comparisons, { pretty: true })}\n`
        : compareText(comparisons, checks.catalogue),
    );
    await output.finish();
    return 0;
  },
};
