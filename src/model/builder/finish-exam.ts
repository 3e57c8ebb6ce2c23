import { type Outcome, orThrow } from '../../issues/issue.ts';
import type { Conclusion } from '../conclusion.ts';
import type { Exam } from '../exam.ts';
import { type ParseOptions, parseExam } from '../parse-exam.ts';
import type { RecordStatus } from '../record-event.ts';
import type { ExamDraft } from './draft.ts';

/**
 * Sets the conclusion, which replaces an earlier one.
 *
 * @param draft The draft so far.
 * @param conclusion Text and concern, and where wanted the plan, the safety net and who was told.
 * @returns The draft with the conclusion.
 * @example
 * draft = conclude(draft, { text: 'A mole, nothing else looked at.', concern: 'none' });
 */
export function conclude(draft: ExamDraft, conclusion: Conclusion): ExamDraft {
  return { exam: { ...draft.exam, conclusion } };
}

/**
 * Makes the exam of a draft and checks it as `parseExam` does.
 *
 * @param draft The draft.
 * @param status The state in which the exam leaves the builder. Only a clinician can make it final,
 *   so there is no default.
 * @param options As for `parseExam`.
 * @returns The exam, with warnings beside it. It fails where any issue is an error.
 * @example
 * const outcome = finishExam(draft, 'preliminary');
 */
export function finishExam(
  draft: ExamDraft,
  status: RecordStatus,
  options?: ParseOptions,
): Outcome<Exam> {
  return parseExam({ ...draft.exam, status }, options);
}

/**
 * Makes the exam of a draft like {@link finishExam} and throws where that fails.
 *
 * @param draft The draft.
 * @param status The state in which the exam leaves the builder.
 * @param options As for `parseExam`.
 * @returns The exam. Warnings are not returned; `finishExam` gives them.
 * @throws {IssueError} Where there is no exam; it holds all issues.
 * @example
 * const finished = finishExamOrThrow(draft, 'preliminary');
 */
export function finishExamOrThrow(
  draft: ExamDraft,
  status: RecordStatus,
  options?: ParseOptions,
): Exam {
  return orThrow('finish the exam', finishExam(draft, status, options));
}
