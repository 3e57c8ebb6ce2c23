import { checkExam } from '../../checks/check-exam.ts';
import type { CheckOptions } from '../../checks/options.ts';
import { type RuleSetId, ruleSet, ruleSets } from '../../checks/rule-sets.ts';
import { parseExam } from '../../model/parse-exam.ts';
import { checkText } from '../check-text.ts';
import type { Call, Command } from '../command.ts';
import { type DocumentStep, eachDocument, jsonDocument } from '../each-document.ts';
import { issueFormatOf } from '../issue-writer.ts';
import { flagOption, type OptionTable, type OptionValues, textOption } from '../options.ts';
import { readExam } from '../read-exam.ts';
import { issueOptions, outOption } from '../shared-options.ts';

/** Which rule sets prompts come from; none is a default, since guidelines differ by country. */
export const ruleSetOption: OptionTable = {
  'rule-set': {
    type: 'text',
    value: 'ID',
    values: ruleSets.map(({ id }) => id),
    repeated: true,
    help: 'Published advice that prompts are taken from, may be repeated; without it there are none',
  },
};

export const priorOptions: OptionTable = {
  prior: { type: 'text', value: 'FILE', help: 'An earlier exam to compare with' },
  'same-patient': {
    type: 'flag',
    help: 'With --prior: both are of one person although their records do not say so',
  },
};

export const command: Command = {
  argumentsText: '[FILE ...]',
  description:
    'Checks exams: what of the protocol is covered, whether statements agree, what rules compute, ' +
    'what changed since an earlier exam, and prompts of the rule sets that are named. Prompts ' +
    'support and never replace the clinician.',
  options: {
    ...ruleSetOption,
    ...priorOptions,
    to: { type: 'text', values: ['text', 'json'], fallback: 'text', help: 'Form of the result' },
    ...outOption,
    ...issueOptions,
  },
  examples: [
    ['check exam.json', 'coverage, consistency and computed figures'],
    ['check exam.json --rule-set suspected-cancer-scotland', 'with the prompts of one guideline'],
    ['check exam.json --prior last-year.json --to json', 'with changes, as JSON'],
  ],
  files: { least: 0, most: Number.POSITIVE_INFINITY },
  run: async (call) => {
    const checks = await checkOptionsOf(call);
    if (checks === undefined) return 1;
    const includeValues = flagOption(call.options, 'include-values');
    const asJson = textOption(call.options, 'to') === 'json';
    const run: DocumentStep['run'] = async (value, document) => {
      const { value: exam, issues } = parseExam(value, { includeValues });
      if (exam === undefined) return { issues };
      const result = checkExam(exam, checks);
      return {
        text: asJson ? jsonDocument(call, document, result) : checkText(result),
        issues: [...issues, ...result.issues],
      };
    };
    return eachDocument(call, { run });
  },
};

/** Options of the checks; undefined where the earlier exam can not be read, which has been told. */
export async function checkOptionsOf({ io, options }: Call): Promise<CheckOptions | undefined> {
  const file = textOption(options, 'prior');
  const prior =
    file === undefined
      ? undefined
      : await readExam(io, file, {
          format: issueFormatOf(options),
          includeValues: flagOption(options, 'include-values'),
        });
  if (file !== undefined && prior === undefined) return undefined;
  return {
    ruleSets: ruleSetsOf(options),
    now: io.now().toISOString(),
    ...(prior !== undefined && { prior }),
    ...(flagOption(options, 'same-patient') && { samePatient: 'assumed' }),
  };
}

function ruleSetsOf(options: OptionValues): RuleSetId[] {
  return (options.get('rule-set') ?? []).flatMap((id) => {
    const set = ruleSet(id);
    return set === undefined ? [] : [set.id];
  });
}
