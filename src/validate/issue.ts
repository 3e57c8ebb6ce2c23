import { validation } from '../issues/english/validation.ts';
import type { FactsFor } from '../issues/facts.ts';
import { issuesOf } from '../issues/issue.ts';

export type ValidationCode = keyof typeof validation;
export type ValidationFacts<Code extends ValidationCode = ValidationCode> = FactsFor<
  typeof validation,
  Code
>;

/** Issues about the validation of FHIR. Severity: `error` unless told. */
export const issue = /*@__PURE__*/ issuesOf(validation);
