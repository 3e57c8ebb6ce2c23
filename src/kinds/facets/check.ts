import type { Comparison } from '../../checks/compare/comparison.ts';
import type { Marker } from '../../checks/coverage/marks.ts';
import type { ExamIndex } from '../../checks/exam-index.ts';
import type { OneSide } from '../../checks/places/sides.ts';
import type { Limit } from '../../checks/settings/thresholds.ts';
import type { Exam } from '../../model/exam.ts';
import type { Key, Side } from '../../model/primitive.ts';
import type { Finding } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { StatementBase } from './base.ts';

/** An exam that is compared, with its statements in order. */
export interface ComparedExam {
  readonly exam: Exam;
  readonly index: ExamIndex;
  /** Signs that are present, by the feature of which they are a value. */
  readonly features: ReadonlyMap<string, readonly Finding[]>;
}

/** A statement in its exam; of several modalities, the one that is compared. */
export interface Compared<S extends StatementBase> {
  readonly statement: S;
  readonly exam: Exam;
  readonly modality: string | undefined;
}

export interface ComparedBy {
  readonly catalogue: Catalogue;
  /** Change of a skin lesion below which nothing is claimed. */
  readonly skinChange: Limit | undefined;
}

export type Verdict = Pick<Comparison, 'change' | 'reason' | 'figures' | 'values'>;

/** One of the things that a statement says and that is compared by itself. */
export interface Variant {
  readonly modality?: string;
  readonly conditions?: string;
}

export interface KindComparison<S extends StatementBase> {
  /** Default: the statement as a whole. */
  variants?(statement: S): readonly Variant[];
  /** Key of the followed lesion that the statement is of. */
  tracking?(statement: S, index: ExamIndex): Key | undefined;
  /** Change between two of one identity. */
  change(now: Compared<S>, before: Compared<S>, by: ComparedBy): Verdict;
  /**
   * Whether the other exam, which states nothing of this identity, denies it; else why not, where it
   * says why. Without this nothing is called new or gone by what one exam is silent on.
   */
  denied?(
    statement: S,
    side: Side | OneSide | undefined,
    other: ComparedExam,
    catalogue: Catalogue,
  ): 'denied' | string | undefined;
}

/** What the checks ask of a kind: facet `check.ts`, listed in `checks.ts`. */
export interface KindCheck<S extends StatementBase> {
  /** What it covers of a protocol, or documents as not done. A comparison of the sides or a note covers nothing. */
  cover?(statement: S, marker: Marker): void;
  /** How two are compared. Notes and pictures are not. */
  readonly comparison?: KindComparison<S>;
  /** Free words of its own, besides the note and the place that any kind can have. */
  words?(statement: S): readonly string[];
}
