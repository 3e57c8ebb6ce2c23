import { checkAgainstSchema } from '../../data/schema-check.ts';
import type { Issue } from '../../issues/issue.ts';
import { examForms } from '../../model/words.ts';
import { mappingValidator } from '../compiled/mapping.js';

/** Where `value` departs from the structure of a mapping, one issue for each fault. */
export function mappingSchemaIssues(value: unknown): Issue[] {
  // A mapping holds no patient data, so its values may be told.
  return checkAgainstSchema(value, {
    validator: mappingValidator,
    forms: examForms,
    includeValues: true,
  });
}
