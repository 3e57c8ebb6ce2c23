import { hasErrors, type Issue } from '../issue.ts';
import { schemaIssues } from './schema.ts';
import type { ValidatedVersion } from './version.ts';

export interface ValidateOptions {
  /** Put the offending value into `received`. Default false, since it can be patient data. */
  readonly includeValues?: boolean;
}

export interface Validation {
  /** No issue is an error. */
  readonly valid: boolean;
  readonly issues: readonly Issue[];
}

/** Runs the stages in their order; a later one sees only what an earlier one accepted. */
export function runStages(
  bundle: unknown,
  version: ValidatedVersion,
  options: ValidateOptions = {},
): Validation {
  const issues = schemaIssues(bundle, version, options);
  return { valid: !hasErrors(issues), issues };
}
