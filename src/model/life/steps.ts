import { failure, type Issue, type Outcome } from '../../issues/issue.ts';
import { cutIssues } from '../../issues/issue-list.ts';
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

/**
 * Issues an exam as a preliminary record: it can be read, and is not verified. A preliminary exam
 * can be released again.
 *
 * @param exam A draft or a preliminary exam.
 * @param step Who does it and when, and where wanted what changes.
 * @param options As for `parseExam`.
 * @returns The exam in its new state, with the step in its history. It fails where the state does
 *   not allow the step.
 * @example
 * const released = releaseExam(exam, { by: 'nurse', at: '2025-05-06T08:30:00Z' });
 */
export function releaseExam(exam: Exam, step: ReleaseStep, options?: ParseOptions): Outcome<Exam> {
  return step?.changes !== undefined
    ? change(exam, 'release', { ...step, changes: step.changes }, options)
    : takeStep({ exam }, 'release', step, options);
}

/**
 * Signs an exam. A draft or preliminary one becomes final; a final or changed one gets one more
 * signature.
 *
 * @param exam The exam to sign.
 * @param step Who does it and when.
 * @param options As for `parseExam`.
 * @returns The exam in its new state, with the step in its history. It fails where the state does
 *   not allow the step.
 * @example
 * const signed = orThrow('sign', signExam(exam, { by: 'nurse', at: '2025-05-06T08:30:00Z' }));
 */
export function signExam(exam: Exam, step: Step, options?: ParseOptions): Outcome<Exam> {
  return takeStep({ exam }, 'sign', step, options);
}

/**
 * Changes what an issued exam says, for a reason that is not an error.
 *
 * @param exam An exam that was issued.
 * @param step Who does it, when and why, and what changes.
 * @param options As for `parseExam`.
 * @returns The exam as amended, with the version before it in its history. It fails where the state
 *   does not allow the step.
 * @example
 * const step = { by: 'nurse', at: '2025-05-06T09:00:00Z', reason: 'Second opinion came in' };
 * const amended = amendExam(exam, { ...step, changes: { statements: exam.statements.slice(1) } });
 */
export function amendExam(exam: Exam, step: ChangingStep, options?: ParseOptions): Outcome<Exam> {
  return change(exam, 'amend', step, options);
}

/**
 * Puts an error in an issued exam right.
 *
 * @param exam An exam that was issued.
 * @param step Who does it, when and why, and what changes.
 * @param options As for `parseExam`.
 * @returns The exam as corrected, with the version before it in its history. It fails where the
 *   state does not allow the step.
 * @example
 * const step = { by: 'nurse', at: '2025-05-06T09:00:00Z', reason: 'Read the wrong line' };
 * const corrected = correctExam(exam, { ...step, changes: { statements: before.statements } });
 */
export function correctExam(exam: Exam, step: ChangingStep, options?: ParseOptions): Outcome<Exam> {
  return change(exam, 'correct', step, options);
}

/**
 * Adds to an issued exam. All that was issued before stays as it was.
 *
 * @param exam An exam that was issued.
 * @param step Who does it and when, and what is added: the statements before, and the new ones.
 * @param options As for `parseExam`.
 * @returns The exam with the addition. It fails where the state does not allow the step, and where
 *   anything issued before would change.
 * @example
 * const { statements } = noted(draft, 'Called the patient on Monday').exam;
 * appendExam(exam, { by: 'nurse', at: '2025-05-12T09:00:00Z', changes: { statements } });
 */
export function appendExam(
  exam: Exam,
  step: Step & { readonly changes: Changes },
  options?: ParseOptions,
): Outcome<Exam> {
  return change(exam, 'append', step, options, overwritten);
}

/**
 * Cancels an exam that was not made or not completed. It can no longer be cancelled once it was
 * final.
 *
 * @param exam A draft or a preliminary exam.
 * @param step Who does it, when and why.
 * @param options As for `parseExam`.
 * @returns The exam as cancelled. It fails where the state does not allow the step.
 * @example
 * cancelExam(exam, { by: 'nurse', at: '2025-05-06T09:00:00Z', reason: 'The patient left' });
 */
export function cancelExam(exam: Exam, step: ReasonedStep, options?: ParseOptions): Outcome<Exam> {
  return takeStep({ exam }, 'cancel', step, options);
}

/**
 * Withdraws a record that should never have been issued, such as that of another patient. No step
 * follows it.
 *
 * @param exam An exam that was issued.
 * @param step Who does it, when and why.
 * @param options As for `parseExam`.
 * @returns The exam as entered in error. It fails where the state does not allow the step.
 * @example
 * retractExam(exam, { by: 'nurse', at: '2025-05-06T09:00:00Z', reason: 'Wrong patient' });
 */
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
