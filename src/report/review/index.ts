export type { Cause } from '../../convert/dry-run/causes.ts';
export {
  type Differences,
  differencesOf,
  type ExamDifference,
  type FateChange,
} from '../../convert/dry-run/differences.ts';
export {
  type Coverage,
  type DryRun,
  type DryRunOptions,
  dryRun,
  type Leftover,
  type TriedExam,
  type TriedField,
} from '../../convert/dry-run/dry-run.ts';
export { type DryRunPage, type DryRunPageOptions, toDryRun } from '../dry-run/to-dry-run.ts';
export type { ProposalReviewWords } from '../proposals/review-words.ts';
export {
  type ProposalReview,
  type ProposalReviewOptions,
  toProposalReview,
} from '../proposals/to-proposal-review.ts';
export { englishProposalReviewWords } from '../proposals/words/english.ts';
export { germanProposalReviewWords } from '../proposals/words/german.ts';
export { type Review, type ReviewOptions, toReview } from './to-review.ts';
