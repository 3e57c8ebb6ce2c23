import { createCellCounter, deidentify } from '../../src/deidentify/index.ts';
import { toFlat } from '../../src/flat/index.ts';
import { orThrow } from '../../src/index.ts';
import { sampleExams } from '../../src/testing/index.ts';

// Forty invented exams. The secret is yours: whoever has it can lead ids and dates back.
const secret = '5d41402abc4b2a76b9719d911017c592';
const cells = createCellCounter({ least: 5 });
const told = new Map<string, number>();
for (const exam of sampleExams(1, 40, { size: 'small' })) {
  const hidden = orThrow('de-identify', deidentify(exam, { secret }));
  cells.add(hidden);
  for (const { status, kind, said, usual } of orThrow('flatten', toFlat(hidden))) {
    // Withdrawn records count for nothing, and only `states` says that something is there.
    if (status === 'entered-in-error' || status === 'cancelled') continue;
    if (said === 'states' && usual === '') told.set(kind, (told.get(kind) ?? 0) + 1);
  }
}
console.log('signs that are there:', told.get('finding'));
console.log('cells that could tell who it is:', cells.small().length > 0);
