import { type Issue, issue, type RecordCode, type RecordFacts } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import type { Exam } from '../../model/exam.ts';
import { isAfter } from '../../model/time.ts';
import { samePatient } from './same-patient.ts';

/** Why a prior exam cannot be compared with; nothing where it can. */
export function priorIssues(exam: Exam, prior: Exam, assumed: boolean): readonly Issue[] {
  const issues: Issue[] = [];
  const report = <Code extends RecordCode>(
    code: Code,
    path: Path,
    facts: RecordFacts<Code>,
  ): void => {
    issues.push(issue(code, ['prior', ...path], facts, { rule: 'R09' }));
  };
  if (prior.id === exam.id) {
    report('same-exam', ['id'], { reason: 'version' });
  }
  const patient = assumed ? 'same' : samePatient(exam, prior);
  if (patient === 'different') {
    report('other-patient', ['subject'], { reason: 'other' });
  } else if (patient === 'unknown') {
    report('other-patient', ['subject'], { reason: 'not-shown' });
  }
  if (isAfter(prior.performed.start, exam.performed.start)) {
    report('reversed-dates', ['performed', 'start'], { reason: 'prior' });
  }
  if (prior.status === 'cancelled' || prior.status === 'entered-in-error') {
    report('withdrawn-exam', ['status'], { reason: 'prior' });
  }
  return issues;
}
