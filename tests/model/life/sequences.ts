import type { Outcome } from '../../../src/issues/issue.ts';
import type { Exam } from '../../../src/model/exam.ts';
import {
  amendExam,
  appendExam,
  cancelExam,
  correctExam,
  releaseExam,
  retractExam,
  type StepAction,
  signExam,
} from '../../../src/model/life/steps.ts';
import type { Note } from '../../../src/model/statement.ts';

export const actions: readonly StepAction[] = [
  'release',
  'sign',
  'amend',
  'correct',
  'append',
  'cancel',
  'retract',
];

/** A draft with one sign and one note, of a docker seen on the quay. */
export const draft: Exam = {
  format: 'face-neck-exam/1',
  id: 'check-life',
  status: 'draft',
  subject: { identifiers: [{ system: 'https://clinic.example/workers', value: 'W-1' }] },
  examiners: [{ key: 'examiner-1', name: { family: 'Varrowby' } }],
  performed: { start: '2024-03-01T09:00:00Z' },
  recorded: '2024-03-01T09:30:00Z',
  protocol: { id: 'full', version: '1.0.0' },
  statements: [
    { key: 'sign', kind: 'finding', finding: 'pallor', presence: 'absent', region: 'general' },
    { key: 'words', kind: 'note', text: 'Seen on the quay' },
  ],
};

/** One step, an hour after the one before, with a change that differs each time. */
export function take(exam: Exam, action: StepAction): Outcome<Exam> {
  const version = (exam.history?.length ?? 0) + 1;
  const step = {
    by: 'examiner-1',
    at: `2024-03-01T${String(9 + version).padStart(2, '0')}:30:00Z`,
    reason: `Step ${version}`,
  };
  const words: Note = { key: 'words', kind: 'note', text: `Version ${version}` };
  const added: Note = { key: `added-${version}`, kind: 'note', text: `Version ${version}` };
  switch (action) {
    case 'release':
      return releaseExam(exam, step);
    case 'sign':
      return signExam(exam, step);
    case 'amend':
      return amendExam(exam, { ...step, changes: { statements: [words] } });
    case 'correct':
      return correctExam(exam, { ...step, changes: { statements: [words] } });
    case 'append':
      return appendExam(exam, { ...step, changes: { statements: [added] } });
    case 'cancel':
      return cancelExam(exam, step);
    case 'retract':
      return retractExam(exam, step);
  }
}

export interface Taken {
  readonly before: Exam;
  readonly action: StepAction;
  readonly outcome: Outcome<Exam>;
}

/** Every sequence of steps up to a length, each as its last step; one that is refused ends there. */
export function* sequences(exam: Exam, length: number): Generator<Taken, void, undefined> {
  if (length === 0) return;
  for (const action of actions) {
    const outcome = take(exam, action);
    yield { before: exam, action, outcome };
    if (outcome.value !== undefined) yield* sequences(outcome.value, length - 1);
  }
}
