import type { Exam } from '../../../src/model/exam.ts';

/** An exam with as little as an exam can have. */
export const bare: Exam = {
  format: 'face-neck-exam/1',
  id: 'check-1',
  status: 'final',
  subject: { reference: 'Patient/1' },
  examiners: [{ key: 'a', reference: 'Practitioner/1' }],
  performed: { start: '2024-03-01T09:00:00Z' },
  recorded: '2024-03-01T09:30:00Z',
  protocol: { id: 'full', version: '1.0.0' },
  statements: [],
};
