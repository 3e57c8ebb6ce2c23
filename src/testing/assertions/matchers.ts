import type { FhirVersion } from '../../fhir/version.ts';
import type { Exam } from '../../model/exam.ts';
import type { ReadOptions } from '../../read/options.ts';
import { conformsTo } from './conforms-to.ts';
import { type HoldsExamOptions, holdsExam } from './holds-exam.ts';
import { holdsIssue, type IssuePattern } from './holds-issue.ts';
import {
  type AboutPlace,
  type FindingPattern,
  holdsFinding,
  holdsNothingAbout,
  holdsStatement,
} from './holds-statement.ts';
import type { StatementPattern } from './pattern.ts';

/** The matchers as `expect` shows them; `Result` is what the runner's own matchers return. */
export interface Matchers<Result = void> {
  /** As `conformsTo`; default `R4`. */
  toConformTo(version?: FhirVersion): Result;
  /** As `holdsExam`. */
  toHoldExam(exam: Exam, options?: HoldsExamOptions): Result;
  /** As `holdsStatement`. */
  toHoldStatement(pattern: StatementPattern, options?: ReadOptions): Result;
  /** As `holdsFinding`. */
  toHoldFinding(finding: FindingPattern, options?: ReadOptions): Result;
  /** As `holdsNothingAbout`. */
  toHoldNothingAbout(place: AboutPlace, options?: ReadOptions): Result;
  /** As `holdsIssue`. */
  toHoldIssue(pattern: IssuePattern): Result;
}

/** The functions that a runner calls. */
export interface MatcherFunctions {
  readonly toConformTo: typeof conformsTo;
  readonly toHoldExam: typeof holdsExam;
  readonly toHoldStatement: typeof holdsStatement;
  readonly toHoldFinding: typeof holdsFinding;
  readonly toHoldNothingAbout: typeof holdsNothingAbout;
  readonly toHoldIssue: typeof holdsIssue;
}

/**
 * For vitest and jest: `expect.extend({ ...matchers })`. Their types know them after
 * `declare module 'vitest' { interface Matchers<T> extends FhirMatchers<T> {} }`, with
 * `import type { Matchers as FhirMatchers } from 'face-neck-fhir/testing'`; in jest the module is
 * `expect` and the interface `Matchers<R>`.
 */
export const matchers: MatcherFunctions = {
  toConformTo: conformsTo,
  toHoldExam: holdsExam,
  toHoldStatement: holdsStatement,
  toHoldFinding: holdsFinding,
  toHoldNothingAbout: holdsNothingAbout,
  toHoldIssue: holdsIssue,
};
