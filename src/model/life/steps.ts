import { failure, type Issue, type Outcome } from '../../issue.ts';
import { cutIssues } from '../../issue-list.ts';
import type { Exam } from '../exam.ts';
import type { ParseOptions } from '../parse-exam.ts';
import type { Text } from '../primitive.ts';
import { applyChanges, type Changes, changeIssues, overwritten } from './changes.ts';
import { illegalStep, type Step, stepIssues, takeStep } from './step.ts';
import { type StepAction, stateAfter } from './transitions.ts';

export type { Changes } from './changes.ts';
export type { Step } from './step.ts';
export { type StepAction, stepsFrom } from './transitions.ts';

/** A step that says why it is taken. */
export interface ReasonedStep extends Step {
  readonly reason: Text;
}

/** A step that changes what the record says. */
export interface ChangingStep extends ReasonedStep {
  readonly changes: Changes;
}

/** A step that may change what the record says. */
export interface ReleaseStep extends Step {
  readonly changes?: Changes;
}

/** The exam as a preliminary record: it can be read, and is not verified. Again for a newer one. */
export function releaseExam(exam: Exam, step: ReleaseStep, options?: ParseOptions): Outcome<Exam> {
  return step?.changes !== undefined
    ? change(exam, 'release', { ...step, changes: step.changes }, options)
    : takeStep({ exam }, 'release', step, options);
}

/** The exam as a final record, or a final or changed record with one more signature. */
export function signExam(exam: Exam, step: Step, options?: ParseOptions): Outcome<Exam> {
  return takeStep({ exam }, 'sign', step, options);
}

/** The exam with other content than was issued, for a reason that is not an error. */
export function amendExam(exam: Exam, step: ChangingStep, options?: ParseOptions): Outcome<Exam> {
  return change(exam, 'amend', step, options);
}

/** The exam with an error put right. */
export function correctExam(exam: Exam, step: ChangingStep, options?: ParseOptions): Outcome<Exam> {
  return change(exam, 'correct', step, options);
}

/** The exam with something added; all that was issued before stays as it was. */
export function appendExam(
  exam: Exam,
  step: Step & { readonly changes: Changes },
  options?: ParseOptions,
): Outcome<Exam> {
  return change(exam, 'append', step, options, overwritten);
}

/** An exam that was not made or not completed, before it was ever final. */
export function cancelExam(exam: Exam, step: ReasonedStep, options?: ParseOptions): Outcome<Exam> {
  return takeStep({ exam }, 'cancel', step, options);
}

/** A record that should never have been issued, such as that of another patient. Nothing follows. */
export function retractExam(exam: Exam, step: ReasonedStep, options?: ParseOptions): Outcome<Exam> {
  return takeStep({ exam }, 'retract', step, options);
}

function change(
  exam: Exam,
  action: StepAction,
  step: Step & { readonly changes: Changes },
  options: ParseOptions | undefined,
  forbidden: (exam: Exam, changes: Changes) => Issue[] = () => [],
): Outcome<Exam> {
  const misshapen = [...stepIssues(exam, step, options?.budget), ...changeIssues(step?.changes)];
  if (misshapen.length > 0) return failure(cutIssues(misshapen));
  if (stateAfter(exam.status, action) === undefined) return failure([illegalStep(exam, action)]);
  const refused = forbidden(exam, step.changes);
  if (refused.length > 0) return failure(refused);
  const { exam: next, issues, ...keys } = applyChanges(exam, step.changes);
  if (next === undefined) return failure(issues);
  const outcome = takeStep({ exam: next, ...keys }, action, step, options);
  return { ...outcome, issues: cutIssues([...issues, ...outcome.issues]) };
}
