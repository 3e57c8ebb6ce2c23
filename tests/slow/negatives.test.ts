import { expect, it } from 'vitest';
import { sampleExams } from '../../src/testing/index.ts';
import { notFound, overread } from '../export/overread.ts';

it.each(['R4', 'R4B', 'R5'] as const)(
  'nothing that was not found in 2,000 exams bears a code of a wider sign or place, %s',
  (fhirVersion) => {
    let denied = 0;
    for (const exam of sampleExams(1, 2000)) {
      denied += notFound(exam);
      expect(overread(exam, { fhirVersion, narrative: false })).toEqual([]);
    }
    expect(denied).toBeGreaterThan(50_000);
  },
);
