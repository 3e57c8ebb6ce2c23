import { type Outcome, orThrow } from '../../issue.ts';
import type { Conclusion } from '../conclusion.ts';
import type { Exam } from '../exam.ts';
import { type ParseOptions, parseExam } from '../parse-exam.ts';
import type { RecordStatus } from '../record-event.ts';
import type { ExamDraft } from './draft.ts';

/** The draft with its conclusion, which replaces an earlier one. */
export function conclude(draft: ExamDraft, conclusion: Conclusion): ExamDraft {
  return { exam: { ...draft.exam, conclusion } };
}

/**
 * The exam of a draft, checked as `parseExam` checks it. `status` is the state that it leaves the
 * builder in; only a clinician can make it final, so there is no default.
 */
export function finishExam(
  draft: ExamDraft,
  status: RecordStatus,
  options?: ParseOptions,
): Outcome<Exam> {
  return parseExam({ ...draft.exam, status }, options);
}

/** As {@link finishExam}, but throws an IssueError that holds the issues. */
export function finishExamOrThrow(
  draft: ExamDraft,
  status: RecordStatus,
  options?: ParseOptions,
): Exam {
  return orThrow('finish the exam', finishExam(draft, status, options));
}
