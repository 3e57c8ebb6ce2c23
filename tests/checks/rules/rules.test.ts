import { describe, expect, it } from 'vitest';
import { checkExam } from '../../../src/checks/check-exam.ts';
import { cautions } from '../../../src/checks/prompts/prompt.ts';
import { rules as allRules } from '../../../src/checks/rules.ts';
import type { CheckOptions } from '../../../src/checks/settings/check-settings.ts';
import { pictures } from '../../../src/checks/tables/pictures.ts';
import { parseExam } from '../../../src/model/parse-exam.ts';
import {
  asExpected,
  caseFiles,
  examOf,
  examStart,
  priorStart,
  type RuleCase,
} from './rule-cases.ts';

/** Pictures of danger have cases of their own, in the bank of warnings. */
const rules = allRules.filter(({ id }) => !Object.hasOwn(pictures, id));

const kinds = ['firing', 'not-firing', 'not-evaluable', 'boundary'] as const;
const outcomeOfKind = {
  firing: 'fires',
  'not-firing': 'does-not-fire',
  'not-evaluable': 'not-evaluable',
  'not-applicable': 'not-applicable',
} as const;

function run(one: RuleCase): ReturnType<typeof checkExam> {
  const options: CheckOptions = {
    ...one.options,
    ...(one.prior !== undefined && { prior: examOf(one.prior, 'E-0', priorStart) }),
  };
  return checkExam(examOf(one.exam, 'E-1', examStart), options);
}

describe('every rule', () => {
  const covered = new Map<string, Set<string>>();
  for (const [, file] of caseFiles) {
    const seen = covered.get(file.rule) ?? new Set();
    for (const one of file.cases) seen.add(one.kind);
    covered.set(file.rule, seen);
  }
  it.each(rules.map((rule) => rule.id))('%s has a case of each kind', (id) => {
    expect(kinds.filter((kind) => covered.get(id)?.has(kind) !== true)).toEqual([]);
  });

  it('is the rule of a case file, and no file is of another', () => {
    expect([...covered.keys()].sort()).toEqual(rules.map((rule) => rule.id).sort());
  });
});

describe.each(caseFiles)('%s', (_name, file) => {
  it('names its source', () => {
    expect(file.source.length).toBeGreaterThan(10);
  });

  it.each(file.cases.map((one) => [`${one.kind}: ${one.name}`, one] as const))('%s', (_, one) => {
    const results = run(one).results.filter((result) => result.ruleId === file.rule);
    expect(results.map((result) => ({ id: result.id, outcome: result.outcome }))).toEqual(
      one.expect.map(({ id, outcome }) => ({ id, outcome })),
    );
    results.forEach((result, at) => {
      const expected = one.expect[at];
      if (expected !== undefined) expect(asExpected(result, expected)).toEqual(expected);
    });
    if (one.kind !== 'boundary') {
      expect(one.expect.map(({ outcome }) => outcome)).toContain(outcomeOfKind[one.kind]);
    }
  });

  it.each(
    file.cases.filter((one) => one.malformed !== true).map((one) => [one.name, one] as const),
  )('the exam is well formed: %s', (_, one) => {
    for (const [parts, id, start] of [
      [one.exam, 'E-1', examStart],
      [one.prior, 'E-0', priorStart],
    ] as const) {
      if (parts === undefined) continue;
      const { issues } = parseExam(examOf(parts, id, start));
      expect(issues.filter((issue) => issue.severity === 'error')).toEqual([]);
    }
  });

  it('leaves the exam as it was and gives the same twice', () => {
    for (const one of file.cases) {
      const before = JSON.stringify(one);
      const first = JSON.stringify(run(one));
      expect(JSON.stringify(run(one))).toBe(first);
      expect(JSON.stringify(one)).toBe(before);
    }
  });

  it('carries the cautions with every prompt', () => {
    for (const one of file.cases) {
      for (const prompt of run(one).prompts) {
        expect(prompt.cautions).toEqual(cautions);
        expect(prompt.ruleSet.publisher).not.toBe('');
        expect(prompt.source).not.toBe('');
      }
    }
  });
});
