import { failure, issue, type Outcome, success } from '../../issue.ts';
import type { Exam } from '../../model/exam.ts';
import { builtInCatalogue, type Catalogue } from '../../terminology/catalogue.ts';
import { type CoverageItem, coverageGaps, coverExam } from './coverage.ts';

/**
 * What the protocol of an exam still asks for, in its order: what the exam is silent on so far. It
 * takes a draft of the builder as well as an exam. No value where the protocol is not known.
 */
export function outstanding(
  draft: Exam | { readonly exam: Exam },
  catalogue: Catalogue = builtInCatalogue,
): Outcome<readonly CoverageItem[]> {
  const exam = 'exam' in draft ? draft.exam : draft;
  const protocol = catalogue.protocols.get(exam.protocol.id);
  if (protocol === undefined) {
    return failure([issue('unknown-protocol', ['protocol', 'id'], { reason: 'outstanding' })]);
  }
  const { coverage, issues } = coverExam(exam, protocol, catalogue);
  return success(coverageGaps(coverage), issues);
}
