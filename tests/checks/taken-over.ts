import { expect } from 'vitest';
import { checkExam } from '../../src/checks/check-exam.ts';
import type { RuleResult } from '../../src/checks/rule.ts';
import { ruleSets } from '../../src/checks/rule-sets.ts';
import type { Exam } from '../../src/model/exam.ts';
import type { Statement } from '../../src/model/statement.ts';
import { caseFiles, examOf, examStart } from './rules/rule-cases.ts';

/**
 * What was taken over from an earlier exam and not looked at again is not known today: HL7 FHIR R4
 * keeps the time of an observation apart from the time of the record that repeats it
 * (https://hl7.org/fhir/R4/observation-definitions.html#Observation.effective_x_).
 */
const everySet = ruleSets.map((set) => set.id);
export const seen = '2020-02-03T09:00:00Z';

export function takenOver<S extends Statement>(statement: S, confirmed = false): S {
  const { at: _at, ...rest } = statement;
  const carried = { exam: 'E-0', statement: statement.key, at: seen, confirmed };
  return { ...rest, key: `${statement.key}.then`, carried } as S;
}

export function outcomes(exam: Exam): ReadonlyMap<string, RuleResult> {
  const { results } = checkExam(exam, { ruleSets: everySet });
  return new Map(results.map((one) => [one.id, one]));
}

/** Whether the result is concluded: something, or its opposite. */
function isConcluded(one: RuleResult | undefined): boolean {
  return one?.outcome === 'fires' || one?.outcome === 'does-not-fire';
}

// The cases of the rules make every rule answer in every way.
export const ruleCases = caseFiles.map(
  ([name, { cases: some }]): readonly [string, readonly Exam[]] => [
    name,
    some.map(({ exam }, at) => examOf(exam, `${name} ${at}`, examStart)),
  ],
);
/** R28 is about the copies, R01 about what the protocol asks for, R02 about the words of one statement. */
const aboutTheRecord = new Set(['R01', 'R02', 'R28']);

function expectSame(exam: Exam, changed: Exam): void {
  const before = outcomes(exam);
  for (const result of outcomes(changed).values()) {
    if (aboutTheRecord.has(result.ruleId) || !isConcluded(result)) continue;
    const same = before.get(result.id)?.outcome;
    expect.soft(same, `${exam.id} ${result.id} ${result.text}`).toBe(result.outcome);
  }
}

/** With a copy of each statement that was taken over and not looked at again. */
export function expectNothingMore(exam: Exam): void {
  const copies = exam.statements.map((one) => takenOver(one));
  expectSame(exam, { ...exam, statements: [...exam.statements, ...copies] });
}

/** With such copies instead of the statements. */
export function expectNothing(exam: Exam): void {
  expectSame({ ...exam, statements: [] }, { ...exam, statements: instead(exam) });
}

/** How many prompts say that they lack what was taken over; all that today's words would settle. */
export function lackingIn(exam: Exam): number {
  const alone = outcomes(exam);
  let lacking = 0;
  for (const result of outcomes({ ...exam, statements: instead(exam) }).values()) {
    if (result.kind === 'consistency' || result.outcome !== 'not-evaluable') continue;
    if (!isConcluded(alone.get(result.id))) continue;
    lacking += 1;
    expect(result.inputsMissing.join(), result.id).toContain('taken over');
  }
  return lacking;
}

function instead(exam: Exam): Statement[] {
  return exam.statements.map((one) => ({ ...takenOver(one), key: one.key }));
}
