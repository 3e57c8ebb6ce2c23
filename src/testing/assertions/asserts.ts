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
import { AssertionFailure, type Verdict } from './verdict.ts';

function assertVerdict({ pass, message }: Verdict): void {
  if (!pass) throw new AssertionFailure(message());
}

/** As {@link conformsTo}; throws an AssertionFailure where it does not hold, like all that follow. */
export function assertConformsTo(resource: unknown, version?: FhirVersion): void {
  assertVerdict(conformsTo(resource, version));
}

export function assertHoldsExam(bundle: unknown, exam: Exam, options?: HoldsExamOptions): void {
  assertVerdict(holdsExam(bundle, exam, options));
}

export function assertHoldsStatement(
  bundle: unknown,
  pattern: StatementPattern,
  options?: ReadOptions,
): void {
  assertVerdict(holdsStatement(bundle, pattern, options));
}

export function assertHoldsFinding(
  bundle: unknown,
  finding: FindingPattern,
  options?: ReadOptions,
): void {
  assertVerdict(holdsFinding(bundle, finding, options));
}

export function assertHoldsNothingAbout(
  bundle: unknown,
  place: AboutPlace,
  options?: ReadOptions,
): void {
  assertVerdict(holdsNothingAbout(bundle, place, options));
}

export function assertHoldsIssue(result: unknown, pattern: IssuePattern): void {
  assertVerdict(holdsIssue(result, pattern));
}
