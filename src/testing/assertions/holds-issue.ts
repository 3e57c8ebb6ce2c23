import { pathText } from '../../issues/path.ts';
import { type Verdict, verdict } from './verdict.ts';

/** What an issue is to say; a property left out may have any value. */
export interface IssuePattern {
  /** `fatal` of an OperationOutcome meets `error`. */
  readonly severity?: string;
  /** Of HL7's list for an OperationOutcome, ours for a result of this library. */
  readonly code?: string;
  /** `entry[3].resource.status`; the name of the resource before it does not count. */
  readonly path?: string;
}

interface SeenIssue {
  readonly severity: string;
  readonly code: string;
  readonly paths: readonly string[];
}

/**
 * Checks whether an issue was reported.
 *
 * @param result An OperationOutcome of a server, a result of this library (`{ issues }`) or a list
 *   of its issues.
 * @param pattern Severity, code or path that the issue must have, such as `expected` of a fault; at
 *   least one of them.
 * @returns The verdict, whose message lists the issues there are.
 * @throws {TypeError} Where the pattern is empty, since any issue would meet it.
 * @example
 * const { pass } = holdsIssue(parseExam(resource), { code: 'missing-side' });
 */
export function holdsIssue(result: unknown, pattern: IssuePattern): Verdict {
  const { severity, code, path } = pattern;
  if (severity === undefined && code === undefined && path === undefined) {
    throw new TypeError('cannot look for an issue: expected a severity, a code or a path');
  }
  const wanted = [severity, code, path && `at ${path}`].filter(Boolean).join(' ');
  const seen = issuesIn(result);
  if (seen === undefined) {
    return verdict(false, 'expected an OperationOutcome, a result with issues, or a list of them');
  }
  const met = seen.filter(
    (one) =>
      (severity === undefined || severityOf(one) === severity) &&
      (code === undefined || one.code === code) &&
      (path === undefined || one.paths.some((own) => plainPath(own) === plainPath(path))),
  );
  return met.length > 0
    ? verdict(true, `there is an issue ${wanted}`, met.map(lineOf))
    : verdict(false, `there is no issue ${wanted}`, seen.map(lineOf));
}

function severityOf({ severity }: SeenIssue): string {
  return severity === 'fatal' ? 'error' : severity;
}

// Some servers put type and id as a comment behind a resource: `resource/*Observation/a1*/.status`.
function plainPath(path: string): string {
  return path
    .replace(/\/\*[^*]*\*\//g, '')
    .replace(/\.ofType\(\w+\)/g, '')
    .replace(/^[A-Z]\w*\.?/, '');
}

function lineOf({ severity, code, paths }: SeenIssue): string {
  return `${paths.join(', ') || '(root)'}  ${severity} ${code}`;
}

function issuesIn(result: unknown): SeenIssue[] | undefined {
  const list = Array.isArray(result) ? result : (own(result, 'issue') ?? own(result, 'issues'));
  return Array.isArray(list) ? list.map(seenIssue) : undefined;
}

function seenIssue(issue: unknown): SeenIssue {
  const path = own(issue, 'path');
  const expression = own(issue, 'expression') ?? own(issue, 'location');
  return {
    severity: String(own(issue, 'severity')),
    code: String(own(issue, 'code')),
    paths: Array.isArray(path)
      ? [pathText(path.map((step) => (typeof step === 'number' ? step : String(step))))]
      : (Array.isArray(expression) ? expression : []).map(String),
  };
}

function own(holder: unknown, name: string): unknown {
  if (typeof holder !== 'object' || holder === null) return undefined;
  return Object.getOwnPropertyDescriptor(holder, name)?.value;
}
