import type { Exam } from '../model/exam.ts';
import type { Key } from '../model/primitive.ts';
import type { Catalogue } from '../terminology/catalogue.ts';
import type { Comparison } from './compare/comparison.ts';
import type { Coverage } from './coverage/coverage.ts';
import type { ExamIndex } from './exam-index.ts';
import type { Judgement } from './settings/check-settings.ts';
import type { Limit, ThresholdId } from './settings/thresholds.ts';
import type { CheckWords } from './words/check-words.ts';

/** What every rule is given. Nothing in it changes while the rules run. */
export interface CheckContext {
  readonly exam: Exam;
  readonly index: ExamIndex;
  readonly catalogue: Catalogue;
  /** Words for what prompts say and what they lack. */
  readonly words: CheckWords;
  /** Codes of the findings that are values of one feature, by feature. */
  readonly features: ReadonlyMap<string, readonly string[]>;
  /** Undefined where the protocol is not known. */
  readonly coverage: Coverage | undefined;
  /** The exam before, of the same person and usable; undefined when there is none. */
  readonly prior: { readonly exam: Exam; readonly index: ExamIndex } | undefined;
  readonly comparisons: readonly Comparison[];
  /** A limit as set for this run; undefined when it is off. */
  readonly limit: (id: ThresholdId) => Limit | undefined;
  readonly judgements: ReadonlyMap<Key, Judgement>;
  /** Settings that only one rule reads. */
  readonly settings: {
    readonly sideDifferences: Readonly<Record<string, string>>;
    readonly populations: readonly string[] | undefined;
    readonly memoryValues: boolean;
    readonly negatives: readonly string[] | undefined;
    readonly now: string | undefined;
  };
}
