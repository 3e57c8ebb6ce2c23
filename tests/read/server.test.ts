import { describe, expect, it } from 'vitest';
import { fromBundle } from '../../src/read/from-bundle.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import { clinic } from '../clinic.ts';
import { sampled } from '../sampled.ts';
import { searchSetOf } from './server.ts';

describe('a search set of a server', () => {
  it('gives back the exam, and nothing but bookkeeping remains', () => {
    for (const exam of [
      ...sampleExams(300, sampled(6, 25), { size: 'small' }),
      ...sampleExams(300, sampled(1, 5)),
    ]) {
      const { value, remainder } = fromBundle(searchSetOf(exam, 7), clinic);
      expect(value, exam.id).toEqual(exam);
      const content = remainder.filter(({ kind }) => kind === 'content');
      expect(content, exam.id).toEqual([]);
      expect(remainder.length).toBeGreaterThan(0);
    }
  });
});
