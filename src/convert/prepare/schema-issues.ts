import type { Issue } from '../../issue.ts';
import { examForms } from '../../model/words.ts';
import { checkAgainstSchema } from '../../schema-check.ts';
import { mappingValidator } from '../compiled/mapping.js';

/** A mapping of every region and test has some ten thousand values, six levels deep. */
const limits = { depth: 20, values: 500_000 };

/** Where `value` departs from the structure of a mapping, one issue for each fault. */
export function mappingSchemaIssues(value: unknown): Issue[] {
  // A mapping holds no patient data, so its values may be told.
  return checkAgainstSchema(value, {
    validator: mappingValidator,
    limits,
    forms: examForms,
    includeValues: true,
  });
}
