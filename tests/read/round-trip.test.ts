import { describe, expect, it } from 'vitest';
import { toBundleOrThrow } from '../../src/export/to-bundle.ts';
import { fromBundle } from '../../src/read/from-bundle.ts';
import { type SampleSize, sampleExam, sampleExams } from '../../src/testing/sample-exam.ts';
import { clinic } from '../clinic.ts';
import { sampled } from '../sampled.ts';
import { everyExport, expectSame, expectSameFromText, otherExports } from './round-trip.ts';

/** tests/slow/read.test.ts takes two thousand, and all twelve ways for each. */
const amounts: readonly (readonly [SampleSize, number])[] = [
  ['small', sampled(6, 12)],
  ['edge', sampled(5, 12)],
  ['usual', sampled(1, 2)],
  ['full', 1],
];

describe('an exam that was exported', () => {
  it.each(amounts)('comes back equal from every version and type, size %s', (size, count) => {
    let at = 0;
    for (const exam of sampleExams(1, count, { size })) {
      // Three of the twelve ways for each exam, so that all meet all over the seeds.
      for (const turn of [0, 1, 2]) {
        const options = everyExport[(at + turn * 5) % everyExport.length] ?? {};
        expectSame(exam, options, clinic);
      }
      at += 1;
    }
  });

  it('comes back equal from its text, decimals as they were stated', () => {
    for (const exam of sampleExams(900, sampled(3, 6), { size: 'edge' })) expectSameFromText(exam);
  });

  it.each(otherExports)('comes back equal %s', (_, options, reading) => {
    for (const exam of sampleExams(40, sampled(1, 2), { size: 'edge' })) {
      for (const one of options) expectSame(exam, one, reading);
    }
    for (const one of options) expectSame(sampleExam(100), one, reading);
  });

  it('is one of several in a bundle, and is chosen by its id', () => {
    const [one, other] = [sampleExam(1, { size: 'small' }), sampleExam(2, { size: 'small' })];
    const entry = [...(toBundleOrThrow(one).entry ?? []), ...(toBundleOrThrow(other).entry ?? [])];
    const both = { resourceType: 'Bundle', type: 'collection', entry };
    expect(fromBundle(both).issues.map(({ code }) => code)).toContain('several-exams');
    expect(fromBundle(both, { exam: other.id }).value).toEqual(other);
    expect(fromBundle(both, { exam: one.id }).value).toEqual(one);
  });
});
