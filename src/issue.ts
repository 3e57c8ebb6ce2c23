import type { IssueCode } from './issue-codes.ts';
import { type Path, pathText } from './path.ts';

export type { IssueCode } from './issue-codes.ts';

export type Severity = 'error' | 'warning' | 'information';

/** Where in a text input an issue arose; lines, columns, segments and fields count from 1. */
export type SourcePosition =
  | { readonly file?: string; readonly line: number; readonly column?: number }
  | {
      readonly file?: string;
      readonly message?: number;
      readonly segment: string;
      readonly segmentIndex: number;
      readonly field?: number;
      readonly repetition?: number;
      readonly component?: number;
    };

/**
 * Anything wrong or worth saying, in the one shape the whole library uses.
 * `message` never holds a value from the data; `received` does, and only where the caller asked.
 */
export interface Issue {
  readonly code: IssueCode;
  readonly severity: Severity;
  readonly message: string;
  readonly path: Path;
  /** The form that would have been accepted. */
  readonly expected?: string;
  /** The offending value as text, cut to 200 characters; only with `includeValues: true`. */
  readonly received?: string;
  readonly source?: SourcePosition;
  /** Rule or specification the issue rests on: an invariant key, a rule id, a URL. */
  readonly rule?: string;
}

/** Result of a step that can fail on data: no `value` means that nothing usable came out. */
export interface Outcome<T> {
  readonly value?: T;
  readonly issues: readonly Issue[];
}

/** Optional parts of an issue; `undefined` is the same as left out. */
export interface IssueDetails {
  readonly severity?: Severity;
  readonly expected?: string | undefined;
  readonly received?: string | undefined;
  readonly source?: SourcePosition | undefined;
  readonly rule?: string | undefined;
}

/** Every issue of the library is made here, so that its shape can not drift. Severity: `error` unless told. */
export function issue(code: IssueCode, path: Path, message: string, details?: IssueDetails): Issue {
  const { severity = 'error', expected, received, source, rule } = details ?? {};
  return {
    code,
    severity,
    message,
    path,
    ...(expected !== undefined && { expected }),
    ...(received !== undefined && { received: received.slice(0, 200) }),
    ...(source !== undefined && { source }),
    ...(rule !== undefined && { rule }),
  };
}

/** The same issues with their paths set below `prefix`: a part reports relative to itself. */
export function issuesBelow(prefix: Path, issues: readonly Issue[]): Issue[] {
  return issues.map((found) => ({ ...found, path: [...prefix, ...found.path] }));
}

export function hasErrors(issues: readonly Issue[]): boolean {
  return issues.some((found) => found.severity === 'error');
}

/** One line for people: `error  statements[3].side  side is missing (expected right or left) [missing-side]`. */
export function issueText(found: Issue): string {
  const where = pathText(found.path) || '(root)';
  const expected = found.expected === undefined ? '' : ` (expected ${found.expected})`;
  return `${found.severity}  ${where}  ${found.message}${expected} [${found.code}]`;
}

/** Thrown by the `OrThrow` form of a function; `issues` holds everything that was found. */
export class IssueError extends Error {
  readonly issues: readonly Issue[];

  constructor(doing: string, issues: readonly Issue[]) {
    const errors = issues.filter((found) => found.severity === 'error');
    const first = errors[0];
    super(
      `cannot ${doing}: ${errors.length} error(s)${first ? `, first: ${issueText(first)}` : ''}`,
    );
    this.name = 'IssueError';
    this.issues = issues;
  }
}

/** The value of an outcome, or an {@link IssueError} when there is none. */
export function orThrow<T>(doing: string, outcome: Outcome<T>): T {
  if (outcome.value === undefined) throw new IssueError(doing, outcome.issues);
  return outcome.value;
}
