import type { Mapping } from '../../../src/convert/mapping/mapping.ts';

/** The head of a mapping for tables with a row an exam, in the columns `id` and `day`. */
export const oneRow: Pick<Mapping, 'format' | 'exam' | 'dates'> = {
  format: 'face-neck-mapping/1',
  exam: {
    id: { prefix: 'c', from: ['id'] },
    status: { value: 'final' },
    subject: { reference: { from: 'id', prefix: 'Patient/' } },
    performed: { start: 'day' },
    recorded: { value: '2024-02-05T10:00:00Z' },
    examiner: { fixed: { name: 'Harbour clinic' } },
    protocol: { id: 'full', version: '1.0.0' },
  },
  dates: { formats: ['YYYYMMDD'] },
};
