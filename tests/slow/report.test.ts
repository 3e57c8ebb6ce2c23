import { describe, expect, it } from 'vitest';
import { sampleExam } from '../../src/testing/index.ts';
import { texts, textsThatBreak, textsThatBreakLetters } from '../report/hostile/hostile-texts.ts';
import { misreadIn, type Tongue, tongues } from '../report/reading/told-once.ts';

const both = Object.keys(tongues) as Tongue[]; // the keys of it

describe('report pages', () => {
  it('keep their structure for a thousand hostile texts', () => {
    expect(textsThatBreak(texts)).toEqual([]);
  });

  it('and letters keep their structure for a thousand hostile texts', () => {
    expect(textsThatBreakLetters(texts)).toEqual([]);
  });

  it.each(both)(
    'of 2,000 seeded exams tell each statement once, no negative as if it were there: %s',
    (tongue) => {
      const wrong = Array.from({ length: 2000 }, (_, at) => at + 1).flatMap((seed) =>
        misreadIn(sampleExam(seed), tongue).map((one) => ({ seed, ...one })),
      );
      expect(wrong.slice(0, 5)).toEqual([]);
    },
  );
});
