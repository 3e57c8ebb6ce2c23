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

/**
 * Checks that a resource conforms to a version of FHIR, like {@link conformsTo}, and throws where
 * it does not.
 *
 * @param resource A bundle or a single resource, as plain data.
 * @param version Version of FHIR. Default `R4`.
 * @throws {AssertionFailure} Where it does not conform, or was not fully checked; its message says
 *   what differs, without values.
 * @example
 * assertConformsTo(bundle);
 */
export function assertConformsTo(resource: unknown, version?: FhirVersion): void {
  assertVerdict(conformsTo(resource, version));
}

/**
 * Checks that a bundle, read back, gives an exam, like {@link holdsExam}, and throws where it does
 * not.
 *
 * @param bundle The bundle as plain data.
 * @param exam The exam that it should hold.
 * @param options Options of the reading, and those of the export.
 * @throws {AssertionFailure} Where the bundle does not hold the same exam; its message says what
 *   differs, without values.
 * @example
 * assertHoldsExam(bundle, exam);
 */
export function assertHoldsExam(bundle: unknown, exam: Exam, options?: HoldsExamOptions): void {
  assertVerdict(holdsExam(bundle, exam, options));
}

/**
 * Checks that a bundle holds a statement, like {@link holdsStatement}, and throws where it does
 * not.
 *
 * @param bundle The bundle as plain data.
 * @param pattern Properties that the statement must have.
 * @param options As for `fromBundle`.
 * @throws {AssertionFailure} Where no statement meets the pattern; its message says what differs,
 *   without values.
 * @example
 * assertHoldsStatement(bundle, { kind: 'note', region: 'nose' });
 */
export function assertHoldsStatement(
  bundle: unknown,
  pattern: StatementPattern,
  options?: ReadOptions,
): void {
  assertVerdict(holdsStatement(bundle, pattern, options));
}

/**
 * Checks that a bundle holds a sign, like {@link holdsFinding}, and throws where it does not.
 *
 * @param bundle The bundle as plain data.
 * @param finding The sign and what else must hold; `presence` is `present` unless stated.
 * @param options As for `fromBundle`.
 * @throws {AssertionFailure} Where the bundle does not hold the sign; its message says what
 *   differs, without values.
 * @example
 * assertHoldsFinding(bundle, { finding: 'naevus', side: 'right' });
 */
export function assertHoldsFinding(
  bundle: unknown,
  finding: FindingPattern,
  options?: ReadOptions,
): void {
  assertVerdict(holdsFinding(bundle, finding, options));
}

/**
 * Checks that a bundle is silent on a place, like {@link holdsNothingAbout}, and throws where it
 * does not.
 *
 * @param bundle The bundle as plain data.
 * @param place The region, and the side where one is meant.
 * @param options As for `fromBundle`.
 * @throws {AssertionFailure} Where the bundle speaks of the place, or a part of it could not be
 *   read; its message says what differs, without values.
 * @example
 * assertHoldsNothingAbout(bundle, { region: 'nose' });
 */
export function assertHoldsNothingAbout(
  bundle: unknown,
  place: AboutPlace,
  options?: ReadOptions,
): void {
  assertVerdict(holdsNothingAbout(bundle, place, options));
}

/**
 * Checks that a server or this library reported an issue, like {@link holdsIssue}, and throws where
 * it does not.
 *
 * @param result An OperationOutcome, a result of this library, or a list of its issues.
 * @param pattern Severity, code or path that the issue must have; at least one of them.
 * @throws {AssertionFailure} Where no issue meets the pattern; its message says what differs,
 *   without values.
 * @example
 * assertHoldsIssue(parseExam(resource), { code: 'missing-side' });
 */
export function assertHoldsIssue(result: unknown, pattern: IssuePattern): void {
  assertVerdict(holdsIssue(result, pattern));
}
