import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkExam } from '../../src/checks/check-exam.ts';
import type { Exam } from '../../src/model/exam.ts';
import { parseExam } from '../../src/model/parse-exam.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { limits } from '../../src/terminology/limits.ts';
import { sampled } from '../sampled.ts';
import { ordinaryExam } from './ordinary.ts';
import { examOf, examStart } from './rules/rule-cases.ts';

interface Case {
  readonly name: string;
  readonly from: 'reported' | 'clinician';
  readonly exam: Partial<Exam>;
}

const bank: { readonly source: string; readonly cases: readonly Case[] } = JSON.parse(
  readFileSync(join(import.meta.dirname, '../cases/checks/bank/contradictions.json'), 'utf8'),
);

/** Rules that speak of what cannot be, or not go together. Ranges and thresholds of disease do not. */
const rules = ['R02', 'R03', 'R35', 'R36', 'R47', 'R48', 'R49', 'R50'];

/** The same said of the form of an exam, so that it is neither finished nor exported. */
const impossible: readonly string[] = ['contradiction', 'implausible-figure'];

function foundIn(exam: Exam): string[] {
  const { issues } = checkExam(exam);
  const told = issues.flatMap(({ rule, severity }) =>
    rule !== undefined && rules.includes(rule) && severity !== 'information' ? [rule] : [],
  );
  return [...told, ...formErrors(exam).filter((code) => impossible.includes(code))];
}

function formErrors(exam: Exam): string[] {
  return parseExam(exam).issues.flatMap(({ code, severity }) =>
    severity === 'error' ? [code] : [],
  );
}

describe('the bank of contradictions and absurd figures', () => {
  it('has a hundred and twenty, sixty of them not reported by a reader', () => {
    expect(bank.cases.length).toBeGreaterThanOrEqual(120);
    expect(bank.cases.filter(({ from }) => from !== 'reported').length).toBeGreaterThanOrEqual(60);
    expect(new Set(bank.cases.map(({ name }) => name)).size).toBe(bank.cases.length);
  });

  it.each(bank.cases)('$name', ({ exam }) => {
    const whole = examOf(exam, 'E-1', examStart);
    expect(foundIn(whole)).not.toEqual([]);
    // Nothing else is wrong with it, so that it is found for what it says.
    expect(formErrors(whole).filter((code) => !impossible.includes(code))).toEqual([]);
  });
});

describe('ordinary exams', () => {
  it('are well formed, and none is flagged: by seed', () => {
    const flagged = Array.from({ length: sampled(80, 200) }, (_, at) =>
      ordinaryExam(at + 1),
    ).flatMap((exam) => {
      const found = [...foundIn(exam), ...formErrors(exam)];
      return found.length === 0 ? [] : [`${exam.id}: ${found.join(' ')}`];
    });
    expect(flagged).toEqual([]);
  });

  const folder = join(import.meta.dirname, '../../examples/exams');
  const examples = readdirSync(folder).filter((name) => name.endsWith('.json'));
  it.each(examples)('the example %s is not flagged', (name) => {
    const exam: Exam = JSON.parse(readFileSync(join(folder, name), 'utf8'));
    expect(foundIn(exam)).toEqual([]);
  });
});

describe('the table of limits', () => {
  it('has every measure that is stated as a figure, and no other', () => {
    const stated = [...builtInCatalogue.measures.values()].filter(
      ({ type, rangeOf, scale, test }) =>
        (rangeOf ?? scale ?? test) === undefined &&
        (type === 'quantity' || type === 'count' || type === 'score'),
    );
    expect(Object.keys(limits).sort()).toEqual(stated.map(({ code }) => code).sort());
  });

  it('holds the usual in the possible, and every published range in the usual', () => {
    for (const [code, { possible, usual }] of Object.entries(limits)) {
      expect(possible.low, code).toBeLessThanOrEqual(usual.low);
      expect(possible.high, code).toBeGreaterThanOrEqual(usual.high);
      for (const { low, high } of builtInCatalogue.measures.get(code)?.ranges ?? []) {
        if (low !== undefined) expect(Number(low), code).toBeGreaterThanOrEqual(usual.low);
        if (high !== undefined) expect(Number(high), code).toBeLessThanOrEqual(usual.high);
      }
      for (const { source } of [possible, usual]) expect(source.length).toBeGreaterThan(10);
    }
  });
});
