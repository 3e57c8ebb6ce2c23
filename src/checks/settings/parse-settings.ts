import { checkAgainstSchema } from '../../data/schema-check.ts';
import { type BudgetOption, within } from '../../issues/budget.ts';
import {
  failure,
  hasErrors,
  type Issue,
  issuesBelow,
  type Outcome,
  success,
} from '../../issues/issue.ts';
import { cutIssues, endedIssue } from '../../issues/issue-list.ts';
import { isOfStructure } from '../../model/schema-issues.ts';
import { examForms } from '../../model/words.ts';
import { settingsValidator } from '../compiled/settings.js';
import type { CheckOptions, CheckSettings } from './check-settings.ts';

/**
 * Reads settings for `checkExam` that come from outside, such as a file. Whether they name codes
 * that the catalogue and the exam hold is for `checkExam` to say.
 *
 * @param value The settings as plain data.
 * @param options `includeValues`: put the offending value into `received` of an issue. Default
 *   false, since it can be patient data.
 * @returns The same value, typed. It fails where anything in it does not fit
 *   `check-settings.schema.json`.
 * @example
 * const settings = orThrow('read the settings', parseCheckSettings({ ruleSets: ['horner-signs'] }));
 */
export function parseCheckSettings(
  value: unknown,
  options: { readonly includeValues?: boolean; readonly budget?: BudgetOption } = {},
): Outcome<CheckSettings> {
  return within(
    'settings',
    options.budget,
    () => parsed(value, options),
    (why) => failure([endedIssue(why)]),
  );
}

function parsed(
  value: unknown,
  { includeValues = false }: { readonly includeValues?: boolean },
): Outcome<CheckSettings> {
  const issues = schemaIssues(value, includeValues);
  if (hasErrors(issues)) return failure(cutIssues(issues));
  return success(value as CheckSettings, issues); // the schema, generated from this type, has accepted it
}

/** What keeps options from being looked into: settings that are not a list, text or object where one is due. */
export function settingStructureIssues({
  catalogue: _,
  prior: _prior,
  samePatient: _same,
  now: _now,
  budget: _budget,
  ...settings
}: CheckOptions): Issue[] {
  return issuesBelow(['options'], schemaIssues(settings, false).filter(isOfStructure));
}

function schemaIssues(value: unknown, includeValues: boolean): Issue[] {
  return checkAgainstSchema(value, {
    validator: settingsValidator,
    forms: examForms,
    includeValues,
  });
}
