import { checkExam } from '../../../checks/check-exam.ts';
import { type RuleSetId, ruleSet, ruleSets } from '../../../checks/rule-sets.ts';
import type { CheckOptions, CheckSettings } from '../../../checks/settings/check-settings.ts';
import { parseCheckSettings } from '../../../checks/settings/parse-settings.ts';
import { failure, hasErrors, type Outcome } from '../../../issues/issue.ts';
import type { Exam } from '../../../model/exam.ts';
import { parseExam } from '../../../model/parse-exam.ts';
import { spanOf } from '../../../model/time.ts';
import { builtInCatalogue } from '../../../terminology/catalogue.ts';
import { inLanguage } from '../../../terminology/languages/language.ts';
import { flagOption, type OptionTable, type OptionValues, textOption } from '../../arguments.ts';
import type { Call, Command } from '../../command.ts';
import { UsageError } from '../../failure.ts';
import { type DocumentStep, eachDocument, jsonDocument } from '../../input/each-document.ts';
import { examOfText, parseOptionsOf, readExam, readJson } from '../../input/read-exam.ts';
import type { CliIo } from '../../io.ts';
import { languageOf, languageOption } from '../../language.ts';
import { answerLines, checkLinesCall, linesOption } from '../../lines/answer-lines.ts';
import { checkText } from '../../output/check-text.ts';
import { issueFormatOf, writeIssues } from '../../output/issue-writer.ts';
import { clinicOption, issueOptions, outOption } from '../../shared-options.ts';

/** Which rule sets prompts come from; none is a default, since guidelines differ by country. */
export const ruleSetOption: OptionTable = {
  'rule-set': {
    type: 'text',
    value: 'ID',
    values: ruleSets.map(({ id }) => id),
    repeated: true,
    help: 'Published advice to take prompts from; may be repeated; without it there are no prompts',
  },
};

export const settingsOption: OptionTable = {
  settings: {
    type: 'text',
    value: 'FILE',
    help: 'Protocol, thresholds, judgements, dismissals and more, in the form of check-settings.schema.json',
  },
};

export const nowOption: OptionTable = {
  now: {
    type: 'text',
    value: 'MOMENT',
    help: 'Moment that dates are checked against, with its zone; default: the clock, and with --lines none',
  },
};

export const priorOptions: OptionTable = {
  prior: { type: 'text', value: 'FILE', help: 'An earlier exam to compare with' },
  'same-patient': {
    type: 'flag',
    help: 'With --prior: both are of the same person although their records do not say so',
  },
};

export const command: Command = {
  argumentsText: '[FILE ...]',
  description:
    'Checks exams: what of the protocol is covered, whether statements agree, what rules compute, ' +
    'what changed since an earlier exam, and prompts of the named rule sets. Prompts ' +
    'support and never replace the clinician. With --lines it works for a program that hands out ' +
    'records: each line is an exam, or {"id": ..., "raw": "text of one"}, and is answered at once with one line.',
  options: {
    ...clinicOption,
    ...ruleSetOption,
    ...languageOption,
    ...settingsOption,
    ...nowOption,
    ...priorOptions,
    ...linesOption,
    to: { type: 'text', values: ['text', 'json'], fallback: 'text', help: 'Form of the result' },
    ...outOption,
    ...issueOptions,
  },
  examples: [
    ['check exam.json', 'coverage, consistency and computed figures'],
    ['check exam.json --rule-set suspected-cancer-scotland', 'with the prompts of one guideline'],
    ['check exam.json --clinic clinic.json', 'by what the clinic has decided'],
    ['check exam.json --settings settings.json', 'with another protocol and other thresholds'],
    ['check exam.json --prior last-year.json --to json', 'with changes, as JSON'],
    ['check --lines < exams.ndjson > checked.ndjson', 'one result per line'],
  ],
  files: { least: 0, most: Number.POSITIVE_INFINITY },
  run: async (call) => {
    const checks = await checkOptionsOf(call);
    if (checks === undefined) return 1;
    const parse = parseOptionsOf(call);
    const { displays, words } = languageOf(call);
    const catalogue = inLanguage(checks.catalogue ?? builtInCatalogue, displays);
    const resultOf = (exam: Exam) => checkExam(exam, { ...checks, catalogue, words: words.checks });
    if (flagOption(call.options, 'lines')) {
      checkLinesCall(call, ['out', 'prior', 'same-patient', 'to']);
      return answerLines(call, (text) => {
        const { value: exam, issues } = examOfText(text, parse);
        if (exam === undefined) return { issues };
        const { issues: found, ...result } = resultOf(exam);
        return { exam: exam.id, issues: [...issues, ...found], result };
      });
    }
    const asJson = textOption(call.options, 'to') === 'json';
    const run: DocumentStep['run'] = async (value, document) => {
      const { value: exam, issues } = parseExam(value, parse);
      if (exam === undefined) return { issues };
      const result = resultOf(exam);
      return {
        text: asJson
          ? jsonDocument(call, document, result)
          : checkText(result, words.checks, catalogue),
        issues: [...issues, ...result.issues],
      };
    };
    return eachDocument(call, { run });
  },
};

/** Options of the checks; undefined where a file that they name cannot be read, which has been told. */
export async function checkOptionsOf(call: Call): Promise<CheckOptions | undefined> {
  const { io, options } = call;
  const file = textOption(options, 'prior');
  const prior = file === undefined ? undefined : await readExam(call, file);
  if (file !== undefined && prior === undefined) return undefined;
  const settings = await settingsOf(io, options);
  if (settings === undefined) return undefined;
  const decided = clinicChecks(call.clinic);
  const named = [...new Set([...(settings.ruleSets ?? []), ...ruleSetsOf(options)])];
  const isNamed = settings.ruleSets !== undefined || options.has('rule-set');
  return {
    ...decided,
    ...settings,
    ruleSets: isNamed ? named : (decided.ruleSets ?? []),
    ...nowOf(call),
    ...(prior !== undefined && { prior }),
    ...(flagOption(options, 'same-patient') && { samePatient: 'assumed' }),
  };
}

/** With `--lines` the clock is not read: the same record is answered alike at any time. */
function nowOf({ io, options }: Call): Pick<CheckOptions, 'now'> {
  const given = textOption(options, 'now');
  if (given !== undefined && (spanOf(given) === undefined || !given.includes('T'))) {
    throw new UsageError('--now takes a moment with its zone, such as 2025-05-06T08:00:00Z');
  }
  if (given === undefined && flagOption(options, 'lines')) return {};
  return { now: given ?? io.now().toISOString() };
}

/** What a clinic has decided on the checks; their language is that of the call. */
export function clinicChecks(clinic: Call['clinic']): CheckOptions {
  if (clinic === undefined) return {};
  const { words: _, ...checks } = clinic.checks;
  return { ...checks, catalogue: clinic.catalogue };
}

async function settingsOf(io: CliIo, options: OptionValues): Promise<CheckSettings | undefined> {
  const file = textOption(options, 'settings');
  if (file === undefined) return {};
  const json = await readJson(io, file);
  const { value, issues }: Outcome<CheckSettings> = hasErrors(json.issues)
    ? failure(json.issues)
    : parseCheckSettings(json.value, { includeValues: flagOption(options, 'include-values') });
  await writeIssues(io, issueFormatOf(options), { input: file }, issues);
  return value;
}

function ruleSetsOf(options: OptionValues): RuleSetId[] {
  return (options.get('rule-set') ?? []).flatMap((id) => {
    const set = ruleSet(id);
    return set === undefined ? [] : [set.id];
  });
}
