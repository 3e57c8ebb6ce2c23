import { type Issue, issue } from '../../issue.ts';
import type { Exam } from '../../model/exam.ts';
import { isAfter } from '../../model/time.ts';
import { samePatient } from './same-patient.ts';

/** Why a prior exam can not be compared with; nothing where it can. */
export function priorIssues(exam: Exam, prior: Exam, assumed: boolean): readonly Issue[] {
  const issues: Issue[] = [];
  const report = (code: Issue['code'], path: Issue['path'], message: string): void => {
    issues.push(issue(code, ['prior', ...path], message, { rule: 'R09' }));
  };
  if (prior.id === exam.id) {
    report('same-exam', ['id'], 'the prior exam is this exam itself, in another version');
  }
  const patient = assumed ? 'same' : samePatient(exam, prior);
  if (patient === 'different') {
    report('other-patient', ['subject'], 'the prior exam is of another patient');
  } else if (patient === 'unknown') {
    report(
      'other-patient',
      ['subject'],
      'nothing in the two records shows that they are of one patient',
    );
  }
  if (isAfter(prior.performed.start, exam.performed.start)) {
    report('reversed-dates', ['performed', 'start'], 'the prior exam is later than this one');
  }
  if (prior.status === 'cancelled' || prior.status === 'entered-in-error') {
    report('withdrawn-exam', ['status'], 'the prior exam was cancelled or entered in error');
  }
  return issues;
}
