import type { Issue } from '../issues/issue.ts';
import { pathPointer } from '../issues/path.ts';
import { endsLook, plainDataIssues } from './plain-data.ts';
import {
  type SchemaErrorOptions,
  type SchemaValidator,
  schemaErrorIssues,
} from './schema-errors.ts';

export interface SchemaCheck extends SchemaErrorOptions {
  readonly validator: SchemaValidator;
}

/** Everything that a compiled schema has against `value`, after a look whether it is safe to apply. */
export function checkAgainstSchema(value: unknown, check: SchemaCheck): Issue[] {
  const found = plainDataIssues(value);
  if (found.some(endsLook)) return found;
  if (check.validator(value)) return found;
  const told = new Set(found.map(({ path }) => pathPointer(path)));
  const errors = schemaErrorIssues(check.validator.errors ?? [], check);
  return [...found, ...errors.filter(({ path }) => !told.has(pathPointer(path)))];
}
