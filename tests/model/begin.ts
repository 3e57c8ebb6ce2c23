import type { ExamStart } from '../../src/index.ts';

/** The start of an exam of one person by one examiner. */
export const begin: ExamStart = {
  id: 'E-1',
  subject: { identifiers: [{ system: 'https://clinic.example/patients', value: 'P-1' }] },
  examiners: [{ key: 'doctor' }],
  performed: { start: '2025-05-05T09:00:00+02:00' },
  recorded: '2025-05-05T09:40:00+02:00',
  protocol: { id: 'full', version: '1.0.0' },
};
