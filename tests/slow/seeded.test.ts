import { describe, expect, it } from 'vitest';
import { sampleExam, sampleExams } from '../../src/testing/sample-exam.ts';
import { expectSoundResults } from '../checks/sound-results.ts';
import { expectAccepted } from '../testing/accepted.ts';

const sizes = [
  ['small', 1500],
  ['usual', 1500],
  ['edge', 1500],
  ['full', 60],
] as const;

describe('seeded exams', () => {
  it.each(sizes)('of size %s are accepted, without two opposites of one place', (size, count) => {
    for (const exam of sampleExams(1, count, { size })) expectAccepted(exam);
  });

  it.each(sizes)('of size %s give sound results', (size, count) => {
    for (let seed = 1; seed <= count / 15; seed += 1) expectSoundResults(seed, size);
  });

  it('follow from their seeds', () => {
    for (const [size] of sizes) expect(sampleExam(77, { size })).toEqual(sampleExam(77, { size }));
  });
});
