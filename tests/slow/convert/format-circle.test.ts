import { describe, expect, it } from 'vitest';
import { formatLosses } from '../../../src/testing/formats/losses/losses.ts';
import { circle, circleExams } from '../../testing/formats/circle.ts';

const exams = circleExams(500);

/** What sample exams never hold; tests/testing/formats has an exam with it. */
const notInSamples = ['about', 'other-numbers'];

describe.each(['csv', 'hl7v2', 'xml', 'cda'] as const)('500 sample exams as %s', (format) => {
  it('come back equal up to the losses of the format, and each loss is met', () => {
    const met = circle(exams, format);
    const known = formatLosses.filter(({ formats }) => formats.includes(format));
    const ids = known.map(({ id }) => id).filter((id) => !notInSamples.includes(id));
    expect([...met].sort()).toEqual(ids.sort());
  });
});
