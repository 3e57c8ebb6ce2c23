import { failure, issue, type Outcome, success } from '../../issues/issue.ts';
import type { Exam } from '../../model/exam.ts';
import { builtInCatalogue, type Catalogue } from '../../terminology/catalogue.ts';
import { type CoverageItem, coverageGaps, coverExam } from './coverage.ts';

/**
 * Lists what the protocol of an exam still asks for: what the exam is silent on so far.
 *
 * @param draft A draft of the builder, or an exam.
 * @param catalogue The tables that hold the protocol. Default: the built-in catalogue.
 * @returns The open items in the order of the protocol. It fails where the catalogue does not hold
 *   the protocol.
 * @example
 * const next = orThrow('list what is open', outstanding(draft))[0];
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
