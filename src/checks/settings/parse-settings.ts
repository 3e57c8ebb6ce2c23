import { failure, hasErrors, type Outcome, success } from '../../issue.ts';
import { examForms } from '../../model/words.ts';
import { checkAgainstSchema } from '../../schema-check.ts';
import { settingsValidator } from '../compiled/settings.js';
import type { CheckSettings } from './check-settings.ts';

/** A protocol of every region, test and point has some thousand values. */
const limits = { depth: 20, values: 500_000 };

/**
 * The settings held by `value`, typed, or everything in them that is not of the published schema.
 * Whether they name what the catalogue and the exam hold is told by `checkExam`.
 */
export function parseCheckSettings(
  value: unknown,
  { includeValues = false }: { readonly includeValues?: boolean } = {},
): Outcome<CheckSettings> {
  const issues = checkAgainstSchema(value, {
    validator: settingsValidator,
    limits,
    forms: examForms,
    includeValues,
  });
  if (hasErrors(issues)) return failure(issues);
  return success(value as CheckSettings, issues); // the schema, generated from this type, has accepted it
}
