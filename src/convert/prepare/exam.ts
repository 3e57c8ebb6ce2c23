import { type Issue, issue } from '../../issue.ts';
import type { Path } from '../../path.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { ExamFields } from '../mapping.ts';
import { unknownCode } from './targets.ts';

/** What an exam needs and this mapping takes from nowhere. */
export function examIssues(exam: ExamFields, catalogue: Catalogue): Issue[] {
  const issues = unknownCode('protocols', exam.protocol.id, ['exam', 'protocol', 'id'], catalogue);
  const { subject, status, recorded, examiner, conclusion } = exam;
  const need = (given: boolean, path: Path, expected: string): void => {
    if (!given) issues.push(issue('missing-property', path, 'nothing says this', { expected }));
  };
  const person = subject.identifiers ?? subject.reference ?? subject.name ?? subject.family;
  need(person !== undefined, ['exam', 'subject'], 'identifiers, a reference or a name');
  need(
    status.from !== undefined || status.value !== undefined,
    ['exam', 'status'],
    'from or value',
  );
  need(
    recorded.from !== undefined || recorded.value !== undefined,
    ['exam', 'recorded'],
    'from or value',
  );
  const fixed = examiner.fixed?.name ?? examiner.fixed?.reference;
  const anyone = examiner.identifier ?? examiner.name ?? fixed;
  need(anyone !== undefined, ['exam', 'examiner'], 'an identifier, a name or fixed');
  if (conclusion !== undefined) {
    const { from, value } = conclusion.concern;
    need(
      from !== undefined || value !== undefined,
      ['exam', 'conclusion', 'concern'],
      'from or value',
    );
  }
  const patterns = [
    ...(subject.identifiers ?? []),
    ...(examiner.identifier ? [examiner.identifier] : []),
  ];
  patterns.forEach(({ pattern }) => {
    if (pattern !== undefined && !isPattern(pattern)) {
      const path = ['exam', 'subject', 'identifiers'];
      issues.push(issue('invalid-value', path, 'the pattern is no regular expression'));
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
