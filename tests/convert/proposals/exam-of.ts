import { finishExamOrThrow, noted, startExam } from '../../../src/index.ts';
import type { Exam } from '../../../src/model/exam.ts';

/** An exam of a vineyard worker with a note of each text, as a conversion would make it. */
export function examOf(...texts: readonly string[]): Exam {
  let draft = startExam({
    id: 'letter-1',
    subject: { name: { text: 'Invented Picker' } },
    examiners: [{ key: 'examiner', name: { text: 'Nell Berth' } }],
    performed: { start: '2025-09-01' },
    recorded: '2025-09-01T10:20:00+02:00',
    protocol: { id: 'full', version: '1.0.0' },
  });
  for (const text of texts) draft = noted(draft, text);
  return finishExamOrThrow(draft, 'final');
}
