import { isPlainObject, isSame, plainDataIssues } from '../../data/plain-data.ts';
import { type BudgetOption, within } from '../../issues/budget.ts';
import { failure, type Issue, issue, type Outcome } from '../../issues/issue.ts';
import { cutIssues, endedIssue } from '../../issues/issue-list.ts';
import { withShownPaths } from '../../issues/shown-path.ts';
import type { Exam } from '../exam.ts';
import { type ParseOptions, parseExam } from '../parse-exam.ts';
import type { Examiner } from '../people.ts';
import type { Instant, Key, Text } from '../primitive.ts';
import type { RecordEvent } from '../record-event.ts';
import { structureIssues } from '../schema-issues.ts';
import { type StepAction, stateAfter, stepsFrom } from './transitions.ts';

export interface Step {
  /** Who takes the step: an examiner of the exam by key, or one who joins it with this step. */
  readonly by: Key | Examiner;
  readonly at: Instant;
  readonly reason?: Text;
}

/** A step and what it makes of the exam, before the rules have seen it. */
interface Taken {
  readonly exam: Exam;
  readonly changed?: readonly Key[];
  readonly withdrawn?: readonly Key[];
}

/**
 * The exam after a step, checked as `parseExam` checks it; the exam given is left as it is. Each step
 * makes a version of the record, which was written when the step was taken.
 */
export function takeStep(
  { exam, changed = [], withdrawn = [] }: Taken,
  action: StepAction,
  step: Step,
  options?: ParseOptions,
): Outcome<Exam> {
  const misshapen = stepIssues(exam, step, options?.budget);
  if (misshapen.length > 0) return failure(misshapen);
  const { by, at, reason } = step;
  const status = stateAfter(exam.status, action);
  if (status === undefined) return failure([illegalStep(exam, action)]);
  const known = exam.examiners.find(({ key }) => key === (typeof by === 'object' ? by.key : by));
  if (typeof by === 'object' && known !== undefined && !isSame(known, by)) {
    return failure([issue('duplicate-key', ['examiners'], { reason: 'examiner' })]);
  }
  const event: RecordEvent = {
    action,
    by: typeof by === 'object' ? by.key : by,
    at,
    ...(reason !== undefined && { reason }),
    version: (exam.history?.length ?? 0) + 1,
    ...(changed.length > 0 && { changed }),
    ...(withdrawn.length > 0 && { withdrawn }),
  };
  const next: Exam = {
    ...exam,
    status,
    recorded: at,
    ...(typeof by === 'object' &&
      known === undefined && { examiners: [...exam.examiners, by] as const }),
    history: [...(exam.history ?? []), event],
  };
  return parseExam(next, options);
}

/**
 * What keeps a step from being looked at: an exam without the structure of one, a step that is no
 * plain data or does not say by whom. The rest of it becomes part of the exam and is checked there.
 */
export function stepIssues(exam: unknown, step: unknown, budget?: BudgetOption): Issue[] {
  return within(
    'exam',
    budget,
    () => misshapenIssues(exam, step),
    (why) => [endedIssue(why)],
  );
}

function misshapenIssues(exam: unknown, step: unknown): Issue[] {
  const misshapen = structureIssues(exam);
  if (misshapen.length > 0) return [...cutIssues(misshapen)];
  const unfit = plainDataIssues(step);
  if (unfit.length > 0) return withShownPaths(unfit, step);
  if (!isPlainObject(step)) return [issue('wrong-type', [], { reason: 'not-an-object' })];
  const { by } = step;
  if (by === undefined) return [issue('missing-property', ['by'], { reason: 'text' })];
  if (typeof by === 'string' || isPlainObject(by)) return [];
  return [issue('wrong-type', ['by'], { reason: 'not-text' })];
}

export function illegalStep({ status }: Exam, action: StepAction): ReturnType<typeof issue> {
  return issue(
    'illegal-step',
    ['status'],
    { reason: 'status', status, step: action, codes: stepsFrom(status) },
    {
      rule: 'https://hl7.org/fhir/R4/codesystem-diagnostic-report-status.html',
    },
  );
}
