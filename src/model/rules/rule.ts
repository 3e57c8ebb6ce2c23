import type { Issue, IssueDetails, RecordCode, RecordFacts } from '../../issues/issue.ts';
import type { nearest } from '../../issues/nearest.ts';
import type { Path } from '../../issues/path.ts';
import type { Saying } from '../../kinds/facets/meaning.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Exam } from '../exam.ts';
import type { Statement } from '../statement.ts';

/** What a rule works with. `report` takes the offending value apart, so that it is shown only where asked. */
export interface RuleContext {
  readonly exam: Exam;
  readonly catalogue: Catalogue;
  /** What a statement of the exam says: `sayingsOf`, asked once for all rules. */
  readonly said: (statement: Statement) => readonly Saying[];
  /** The known name most like one that is not known, for the first such names of the exam. */
  readonly nearest: typeof nearest;
  readonly report: <Code extends RecordCode>(
    code: Code,
    path: Path,
    facts: RecordFacts<Code>,
    details?: IssueDetails & { readonly value?: unknown },
  ) => void;
}

/** A rule on the form of an exam that its schema cannot express. It reports and returns nothing. */
export type ExamRule = (context: RuleContext) => void;

export type { Issue };
