import { expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { sampleExams } from '../../src/testing/index.ts';
import { expectNothing, expectNothingMore, lackingIn, ruleCases } from '../checks/taken-over.ts';

const exams = [
  ...ruleCases,
  ['the examples', [...examples.values()]] as const,
  ['sample exams', [...sampleExams(7, 200)]] as const,
];

it.each(exams)(
  'what was taken over and not looked at again in %s counts in no rule as of today',
  (_name, several) => {
    for (const exam of several) {
      expectNothingMore(exam);
      expectNothing(exam);
    }
  },
);

it('is what rules say that they lack, in every case of theirs', () => {
  const cases = ruleCases.flatMap(([, several]) => several);
  expect(cases.reduce((sum, exam) => sum + lackingIn(exam), 0)).toBeGreaterThan(100);
});
