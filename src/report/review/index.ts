export { type Review, type ReviewOptions, toReview } from './to-review.ts';
