export type { AllowedChange, ServerChange } from '../deliver/stored/changes.ts';
export {
  assertConformsTo,
  assertHoldsExam,
  assertHoldsFinding,
  assertHoldsIssue,
  assertHoldsNothingAbout,
  assertHoldsStatement,
} from './assertions/asserts.ts';
export { conformsTo } from './assertions/conforms-to.ts';
export { type HoldsExamOptions, holdsExam } from './assertions/holds-exam.ts';
export { holdsIssue, type IssuePattern } from './assertions/holds-issue.ts';
export {
  type AboutPlace,
  type FindingPattern,
  holdsFinding,
  holdsNothingAbout,
  holdsStatement,
} from './assertions/holds-statement.ts';
export { type MatcherFunctions, type Matchers, matchers } from './assertions/matchers.ts';
export type { StatementPattern } from './assertions/pattern.ts';
export { AssertionFailure, type Verdict } from './assertions/verdict.ts';
export { applyFault, faultIds, faults } from './faults/apply-fault.ts';
export type { Fault, FaultArea, FaultRule, Mutant } from './faults/fault.ts';
export type { LegacyFormatName } from './formats/format.ts';
export { sampleMapping, writeExams } from './formats/formats.ts';
export { formatLosses, type Loss, type LossPlace } from './formats/losses/losses.ts';
export { type Arrival, whatArrives, withNumberedKeys } from './formats/losses/what-arrives.ts';
export { type Misbehaviour, misbehaviours, type ProbeNote } from './probe/misbehaviour.ts';
export type { ProbeOptions } from './probe/options.ts';
export { probeServer } from './probe/probe-server.ts';
export type {
  FaultVerdict,
  ProbeCapability,
  ProbeReport,
  ProbeStep,
} from './probe/report/report.ts';
export { probeJUnit } from './probe/report/report-junit.ts';
export { probeText } from './probe/report/report-text.ts';
export { type SampleOptions, type SampleSize, sampleExam, sampleExams } from './sample-exam.ts';
