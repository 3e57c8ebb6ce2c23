import { checkAgainstSchema } from '../data/schema-check.ts';
import type { Issue } from '../issues/issue.ts';
import { withShownPaths } from '../issues/shown-path.ts';
import { examValidator } from './compiled/exam.js';
import { examForms } from './words.ts';

/**
 * Where `value` departs from the structure of an exam, one issue for each fault. Whether codes, sides
 * and keys fit together is not looked at here.
 */
export function examSchemaIssues(
  value: unknown,
  { includeValues = false }: { readonly includeValues?: boolean } = {},
): Issue[] {
  const issues = checkAgainstSchema(value, {
    validator: examValidator,
    forms: examForms,
    includeValues,
  });
  return withShownPaths(issues, value);
}

/**
 * What keeps a value from being looked into as an exam: parts that are missing or of another type.
 * Codes, numbers and texts may be of any form, but the status.
 */
export function structureIssues(value: unknown): Issue[] {
  // A status that there is not stands for no state of a record, whatever is made of the rest.
  return examSchemaIssues(value).filter((one) => isOfStructure(one) || one.path[0] === 'status');
}

/** An issue without which the rest cannot be looked into. */
export function isOfStructure({ code, facts }: Issue): boolean {
  return (
    code === 'wrong-type' ||
    code === 'missing-property' ||
    code === 'too-deep' ||
    // Where a text is unfit, that an object was due there is not told beside it.
    code === 'invalid-unicode' ||
    facts.reason === 'values' ||
    facts.reason === 'kind'
  );
}
