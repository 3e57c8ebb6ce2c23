import type { Issue, IssueCode, Severity } from '../../src/issues/issue.ts';

/** An issue as a person reads it. */
export interface Told {
  readonly code: IssueCode;
  readonly severity: Severity;
  readonly message: string;
  readonly path: Issue['path'];
  readonly expected?: string;
  readonly received?: string;
}

/** Issues without their facts, for cases that hold what is said; each must have facts all the same. */
export function withoutFacts(issues: readonly Issue[]): Told[] {
  return issues.map(({ facts, ...told }) => {
    if (facts.reason === undefined) throw new Error(`no reason: ${told.message}`);
    return told;
  });
}
