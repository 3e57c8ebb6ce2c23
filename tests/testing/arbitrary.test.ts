import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hasErrors } from '../../src/issues/issue.ts';
import type { Exam } from '../../src/model/exam.ts';
import { optionalParts } from '../../src/model/optional-parts.ts';
import { parseExam } from '../../src/model/parse-exam.ts';
import { examArbitrary } from '../../src/testing/arbitrary.ts';
import { sampled } from '../sampled.ts';

describe('the arbitrary of exams', () => {
  it('makes exams without errors, whatever is left of them', () => {
    fc.assert(
      fc.property(examArbitrary(fc), (exam) => !hasErrors(parseExam(exam).issues)),
      { numRuns: sampled(60, 200), seed: 1 },
    );
  });

  it('shrinks a failing exam to what the failure needs', () => {
    const measures = (exam: Exam): number =>
      exam.statements.filter(({ kind }) => kind === 'measurement').length;
    const result = fc.check(
      fc.property(examArbitrary(fc), (exam) => measures(exam) === 0),
      { numRuns: 100, seed: 2 },
    );
    expect(result.failed).toBe(true);
    const [smallest] = result.counterexample ?? [];
    expect(smallest?.statements.map(({ kind }) => kind)).toEqual(['measurement']);
    expect(optionalParts.filter((part) => smallest?.[part] !== undefined)).toEqual([]);
    expect(smallest && hasErrors(parseExam(smallest).issues)).toBe(false);
  });

  it('draws from the sizes that are asked for', () => {
    const drawn = fc.sample(examArbitrary(fc, { sizes: ['usual'] }), { numRuns: 5, seed: 3 });
    for (const { id } of drawn) expect(id).toMatch(/^check-usual-/);
  });
});
