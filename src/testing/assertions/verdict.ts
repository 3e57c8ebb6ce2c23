import { type Issue, issueText } from '../../issues/issue.ts';

/**
 * Whether an expectation holds, and why: what is missing where it does not, what was found where it
 * does. The form is the one that `expect.extend` of vitest and of jest takes.
 */
export interface Verdict {
  readonly pass: boolean;
  /** What holds or does not, and where. */
  readonly message: () => string;
}

/** Thrown by the `assert` functions; runners and Node show its message. */
export class AssertionFailure extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'AssertionFailure';
  }
}

/** Lines after which a list is cut; what was left out is counted. */
const shown = 12;

export function verdict(pass: boolean, head: string, lines: readonly string[] = []): Verdict {
  return { pass, message: () => [head, ...cut(lines)].join('\n  ') };
}

function cut(lines: readonly string[]): readonly string[] {
  if (lines.length <= shown) return lines;
  return [...lines.slice(0, shown), `and ${lines.length - shown} more`];
}

/** Errors before warnings, so that a cut list keeps what made the expectation fail. */
export function issueLines(issues: readonly Issue[]): string[] {
  const errors = issues.filter(({ severity }) => severity === 'error');
  const others = issues.filter(({ severity }) => severity !== 'error');
  return [...errors, ...others].map(issueText);
}
