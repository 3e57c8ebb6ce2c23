import type { Issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { issue } from '../issue.ts';
import type { ExamFields } from '../mapping/exam-fields.ts';
import { unknownCode } from './targets.ts';

/** What an exam needs and this mapping takes from nowhere. */
export function examIssues(exam: ExamFields, catalogue: Catalogue): Issue[] {
  const issues = unknownCode('protocols', exam.protocol.id, ['exam', 'protocol', 'id'], catalogue);
  const { subject, status, recorded, examiner, conclusion } = exam;
  const need = (given: boolean, path: Path, codes: readonly string[]): void => {
    if (!given) issues.push(issue('missing-property', path, { reason: 'exam-value', codes }));
  };
  const person = subject.identifiers ?? subject.reference ?? subject.name ?? subject.family;
  need(person !== undefined, ['exam', 'subject'], ['identifiers', 'reference', 'name']);
  need(
    status.from !== undefined || status.value !== undefined,
    ['exam', 'status'],
    ['from', 'value'],
  );
  need(
    recorded.from !== undefined || recorded.value !== undefined,
    ['exam', 'recorded'],
    ['from', 'value'],
  );
  const fixed = examiner.fixed?.name ?? examiner.fixed?.reference;
  const anyone = examiner.identifier ?? examiner.name ?? fixed;
  need(anyone !== undefined, ['exam', 'examiner'], ['identifier', 'name', 'fixed']);
  if (conclusion !== undefined) {
    const { from, value } = conclusion.concern;
    need(
      from !== undefined || value !== undefined,
      ['exam', 'conclusion', 'concern'],
      ['from', 'value'],
    );
  }
  const patterns = [
    ...(subject.identifiers ?? []),
    ...(examiner.identifier ? [examiner.identifier] : []),
  ];
  patterns.forEach(({ pattern }) => {
    if (pattern !== undefined && !isPattern(pattern)) {
      const path = ['exam', 'subject', 'identifiers'];
      issues.push(issue('invalid-value', path, { reason: 'pattern' }));
    }
  });
  return issues;
}

function isPattern(text: string): boolean {
  try {
    new RegExp(`^(?:${text})$`, 'u');
    return true;
  } catch {
    return false;
  }
}
