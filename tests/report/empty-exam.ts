import type { Exam } from '../../src/index.ts';

/** An exam that states nothing, by protocol. */
export function emptyExam(protocol: string): Exam {
  return {
    format: 'face-neck-exam/1',
    id: 'quay-1',
    status: 'final',
    subject: { reference: 'Patient/1' },
    examiners: [{ key: 'nurse' }],
    performed: { start: '2025-05-05T09:00:00+02:00' },
    recorded: '2025-05-05T09:40:00+02:00',
    protocol: { id: protocol, version: '1.0.0' },
    statements: [],
  };
}
