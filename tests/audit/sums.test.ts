import { describe, expect, it } from 'vitest';
import {
  type AuditSums,
  addSums,
  auditOfSums,
  createAuditor,
  parseAuditSums,
} from '../../src/audit/index.ts';
import { limitsOfSums, noDifferences, withDifference } from '../../src/audit/sums/differences.ts';
import { noSums } from '../../src/audit/sums/sums.ts';
import { type Exam, toJson } from '../../src/index.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import { seeded } from '../convert/random.ts';

const checks = { ruleSets: ['horner-signs'] } as const;
const exams = [...sampleExams(1, 24, { size: 'small' })];

function sumsOf(some: readonly Exam[]): AuditSums {
  const auditor = createAuditor({ checks });
  for (const exam of some) auditor.add(exam);
  return auditor.sums();
}

describe('sums of an audit', () => {
  it('are the same whatever the cut and the order, and give what one auditor gives', () => {
    const auditor = createAuditor({ checks });
    for (const exam of exams) auditor.add(exam);
    const whole = toJson(auditor.result());
    const random = seeded(11);
    for (let round = 0; round < 5; round++) {
      const parts: Exam[][] = [[], [], [], []];
      for (const exam of exams) parts[random.below(parts.length)]?.push(exam);
      const sums = parts.map(sumsOf).map((some) => parseAuditSums(JSON.parse(toJson(some))).value);
      const added = sums.reduce<AuditSums>((all, some) => addSums(some ?? noSums, all), noSums);
      expect(toJson(auditOfSums(added))).toBe(whole);
    }
  });

  it('hold differences without rounding: 0.1 a thousand times, added in any grouping', () => {
    let one = noDifferences;
    for (let count = 0; count < 1000; count++) one = withDifference(one, '6.5', '6.4');
    expect(one).toEqual({ count: 1000, sum: '100', squares: '10' });
    expect(limitsOfSums(one)).toMatchObject({ mean: 0.1, deviation: 0, lower: 0.1, upper: 0.1 });
  });

  it.each([
    ['no object', [], []],
    ['of another format', { ...noSums, format: 'face-neck-exam/1' }, ['format']],
    ['with less than none', { ...noSums, exams: -1 }, ['exams']],
    ['with a half', { ...noSums, statuses: { final: 0.5 } }, ['statuses']],
    ['with nine digits', { ...noSums, digits: { mrd1: [1, 2, 3, 4, 5, 6, 7, 8, 9] } }, ['digits']],
    [
      'with a rounded sum',
      { ...noSums, measures: { mrd1: { count: 1, sum: 0.1, squares: '0.01' } } },
      ['measures'],
    ],
    ['with more than sums have', { ...noSums, patients: {} }, ['patients']],
    ['with a part of a tally', { ...noSums, regions: { nose: { required: 1 } } }, ['regions']],
    ['without prompts', { ...noSums, prompts: undefined }, ['prompts']],
  ])('are refused: %s', (_, value, path) => {
    const { ok, issues } = parseAuditSums(value);
    expect(ok).toBe(false);
    expect(issues.map((found) => found.path)).toContainEqual(path);
  });
});
