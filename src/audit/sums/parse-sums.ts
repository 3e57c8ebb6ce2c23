import { endsLook, isPlainObject, plainDataIssues } from '../../data/plain-data.ts';
import { failure, issue, type Outcome, success } from '../../issues/issue.ts';
import { type AuditSums, SUMS_FORMAT } from './sums.ts';

type Test = (value: unknown) => boolean;

const count: Test = (value) => Number.isSafeInteger(value) && Number(value) >= 0;
const text: Test = (value) => typeof value === 'string' && value.length <= 100;
const decimal: Test = (value) =>
  typeof value === 'string' && /^-?\d{1,40}(\.\d{1,40})?$/.test(value);
const ten: Test = (value) => Array.isArray(value) && value.length === 10 && value.every(count);
const named =
  (test: Test): Test =>
  (value) =>
    isPlainObject(value) && Object.values(value).every(test);
const counts = (...names: readonly string[]): Test =>
  shaped(Object.fromEntries(names.map((name) => [name, count])));
const shaped =
  (tests: Readonly<Record<string, Test>>): Test =>
  (value) =>
    isPlainObject(value) &&
    Object.keys(value).every((name) => Object.hasOwn(tests, name)) &&
    Object.entries(tests).every(([name, test]) => test(value[name]));

const tally = counts('required', 'complete', 'partial', 'carried', 'documented', 'gaps');

const parts: Readonly<Record<keyof AuditSums, Test>> = {
  format: (value) => value === SUMS_FORMAT,
  exams: count,
  first: (value) => value === undefined || text(value),
  last: (value) => value === undefined || text(value),
  statuses: named(count),
  concerns: named(count),
  protocols: named(tally),
  regions: named(tally),
  reasons: named(count),
  findings: named(count),
  prompts: named(counts('fired', 'open')),
  corrections: counts('exams', 'steps', 'sides'),
  pairs: count,
  signs: named(counts('both', 'first', 'second', 'neither')),
  measures: named(shaped({ count, sum: decimal, squares: decimal })),
  digits: named(ten),
};

/**
 * Reads sums of an audit that were written as JSON.
 *
 * @param value What `sums()` of an auditor gave, read from JSON.
 * @returns The sums. It fails where a part of them is missing, is of another form, or is none of theirs.
 * @example
 * const { value } = parseAuditSums(JSON.parse(text));
 */
export function parseAuditSums(value: unknown): Outcome<AuditSums> {
  const unsafe = plainDataIssues(value);
  if (unsafe.some(endsLook) || !isPlainObject(value)) {
    return failure([...unsafe, issue('wrong-type', [], { reason: 'not-an-object' })]);
  }
  const wrong = Object.entries(parts).flatMap(([name, test]) =>
    test(value[name])
      ? []
      : [issue('wrong-type', [name], { reason: 'not-made', code: 'createAuditor' })],
  );
  const unknown = Object.keys(value)
    .filter((name) => !Object.hasOwn(parts, name))
    .map((name) => issue('unknown-property', [name], { reason: 'object' }));
  const issues = [...unsafe, ...wrong, ...unknown];
  return issues.length > 0 ? failure(issues) : success(value as unknown as AuditSums); // just looked at
}
