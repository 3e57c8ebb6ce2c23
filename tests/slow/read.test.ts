import { describe, expect, it } from 'vitest';
import { fromBundle } from '../../src/read/from-bundle.ts';
import { sampleExam, sampleExams } from '../../src/testing/sample-exam.ts';
import { clinic } from '../clinic.ts';
import { expectAnswerToAnyValue, unseenAdditions, unseenChanges } from '../read/nothing-lost.ts';
import { everyExport, expectSame, expectSameFromText, otherExports } from '../read/round-trip.ts';
import { searchSetOf } from '../read/server.ts';

const sizes = [
  ['small', 900],
  ['edge', 900],
  ['usual', 180],
  ['full', 20],
] as const;

describe('reading bundles back', () => {
  it.each(sizes)(
    'gives equal exams for every version and type, size %s',
    (size, count) => {
      for (const exam of sampleExams(10_000, count, { size })) {
        for (const options of everyExport) {
          expectSame(exam, options, clinic);
        }
      }
    },
    7_200_000,
  );

  it.each(otherExports)('gives equal exams %s', (_, options, reading) => {
    for (const exam of [...sampleExams(40, 60), ...sampleExams(100, 60, { size: 'edge' })]) {
      for (const one of options) expectSame(exam, one, reading);
    }
  });

  it('gives equal exams from their texts, decimals as they were stated', () => {
    for (const exam of sampleExams(900, 200, { size: 'edge' })) expectSameFromText(exam);
  });

  it('gives an exam or issues whatever stands in the place of a value', () => {
    expectAnswerToAnyValue({ exam: sampleExam(4, { size: 'edge' }), turn: 2, of: 41 });
  });

  it('gives equal exams from the search sets of a server', () => {
    for (const exam of sampleExams(20_000, 300)) {
      const { value, remainder } = fromBundle(searchSetOf(exam, 1), clinic);
      expect(value, exam.id).toEqual(exam);
      expect(
        remainder.filter(({ kind }) => kind === 'content'),
        exam.id,
      ).toEqual([]);
    }
  });

  it.each([1, 2, 3, 4, 5, 6])(
    'loses nothing that is changed or added anywhere, seed %i',
    (turn) => {
      const exam = sampleExam(turn, { size: turn % 2 === 0 ? 'edge' : 'small' });
      expect(unseenChanges({ exam, turn, of: 1 })).toEqual([]);
      expect(unseenAdditions({ exam, turn, of: 1 })).toEqual([]);
    },
    7_200_000,
  );
});
