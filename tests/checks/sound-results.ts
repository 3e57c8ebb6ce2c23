import { expect } from 'vitest';
import { checkExam } from '../../src/checks/check-exam.ts';
import { ruleSets } from '../../src/checks/rule-sets.ts';
import type { CheckOptions } from '../../src/checks/settings/check-settings.ts';
import { type SampleSize, sampleExam } from '../../src/testing/sample-exam.ts';

const everySet = ruleSets.map((set) => set.id);

/** Checks an exam of the seed beside an earlier one: twice the same, and each result sound. */
export function expectSoundResults(seed: number, size: SampleSize): void {
  const exam = sampleExam(seed, { size });
  const before = JSON.stringify(exam);
  const prior = {
    ...sampleExam(seed + 1000, { size }),
    performed: { start: '1990-01-01' },
    recorded: '1990-01-01T12:00:00Z',
  };
  const options: CheckOptions = { ruleSets: everySet, prior, samePatient: 'assumed' };
  const result = checkExam(exam, options);
  expect(JSON.stringify(checkExam(exam, options))).toBe(JSON.stringify(result));
  expect(JSON.stringify(exam)).toBe(before);
  const { results, notEvaluable, prompts } = result;
  const ids = results.map((one) => one.id);
  expect(new Set(ids).size).toBe(ids.length);
  const keys = new Set(exam.statements.map((one) => one.key));
  const other = results.flatMap((one) => one.inputsUsed).filter((key) => !keys.has(key));
  expect(
    other.filter((key) => key !== 'subject.birthDate' && !key.startsWith('condition.')),
  ).toEqual([]);
  // What is not evaluable says why.
  for (const one of notEvaluable) expect(one.inputsMissing, one.id).not.toEqual([]);
  for (const one of results) expect(one.text).toMatch(/\S\.?$/);
  expect(prompts.every((one) => one.outcome === 'fires')).toBe(true);
}
