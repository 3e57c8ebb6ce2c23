import { describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { checkExam } from '../../src/checks/check-exam.ts';
import type { RuleResult } from '../../src/checks/rule.ts';
import { ruleSets } from '../../src/checks/rule-sets.ts';
import type { Exam } from '../../src/model/exam.ts';
import type { Statement } from '../../src/model/statement.ts';
import { germanWords, toHtml } from '../../src/report/index.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { sampleExams } from '../../src/testing/index.ts';
import { caseFiles, examOf, examStart } from './rule-cases.ts';

/**
 * What was taken over from an earlier exam and not looked at again is not known today: HL7 FHIR R4
 * keeps the time of an observation apart from the time of the record that repeats it
 * (https://hl7.org/fhir/R4/observation-definitions.html#Observation.effective_x_).
 */
const everySet = ruleSets.map((set) => set.id);
const seen = '2020-02-03T09:00:00Z';

function takenOver<S extends Statement>(statement: S, confirmed = false): S {
  const { at: _at, ...rest } = statement;
  const carried = { exam: 'E-0', statement: statement.key, at: seen, confirmed };
  return { ...rest, key: `${statement.key}.then`, carried } as S;
}

function outcomes(exam: Exam): ReadonlyMap<string, RuleResult> {
  const { results } = checkExam(exam, { ruleSets: everySet });
  return new Map(results.map((one) => [one.id, one]));
}

/** Whether the result is concluded: something, or its opposite. */
function isConcluded(one: RuleResult | undefined): boolean {
  return one?.outcome === 'fires' || one?.outcome === 'does-not-fire';
}

// The cases of the rules make every rule answer in every way.
const cases = caseFiles.map(([name, { cases: some }]): readonly [string, readonly Exam[]] => [
  name,
  some.map(({ exam }, at) => examOf(exam, `${name} ${at}`, examStart)),
]);
const exams: typeof cases = [
  ...cases,
  ['examples', [...examples.values()]],
  ['sample exams', [...sampleExams(7, 2)]],
];

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

describe('what was taken over and not looked at again', () => {
  it.each(exams)('beside what %s state concludes nothing more', (_name, several) => {
    for (const exam of several) {
      const copies = exam.statements.map((one) => takenOver(one));
      expectSame(exam, { ...exam, statements: [...exam.statements, ...copies] });
    }
  });

  it.each(exams)('instead of what %s state concludes nothing', (_name, several) => {
    for (const exam of several) {
      const statements = exam.statements.map((one) => ({ ...takenOver(one), key: one.key }));
      expectSame({ ...exam, statements: [] }, { ...exam, statements });
    }
  });

  it('is what a rule says that it lacks', () => {
    let lacking = 0;
    for (const exam of cases.flatMap(([, several]) => several)) {
      const alone = outcomes(exam);
      const statements = exam.statements.map((one) => ({ ...takenOver(one), key: one.key }));
      for (const result of outcomes({ ...exam, statements }).values()) {
        const then = alone.get(result.id);
        if (result.kind === 'consistency' || result.outcome !== 'not-evaluable') continue;
        if (!isConcluded(then)) continue;
        lacking += 1;
        expect(result.inputsMissing.join(), result.id).toContain('taken over');
      }
    }
    expect(lacking).toBeGreaterThan(100);
  });

  it('leaves a warning undecided that the same words of today rule out', () => {
    const stridor: Statement = {
      kind: 'symptom',
      key: 'stridor',
      symptom: 'sym-throat.stridor',
      answer: 'no',
    };
    const airway = (statement: Statement): RuleResult | undefined =>
      outcomes(examOf({ statements: [statement] }, 'E-1', examStart)).get('R16b:airway');
    expect(airway({ ...takenOver(stridor), key: 'stridor' })?.outcome).toBe('not-evaluable');
    const confirmed = airway({ ...takenOver(stridor, true), key: 'stridor' });
    expect(confirmed?.outcome).toBe(airway(stridor)?.outcome);
  });

  it.each([
    ['English', undefined, 'Taken over from an earlier exam and not looked at again'],
    ['German', germanWords, 'Aus einer früheren Untersuchung übernommen'],
  ])('stands apart on the page in %s, with its date', (_name, words, heading) => {
    for (const exam of [...examples.values()].slice(0, 3)) {
      const statements = exam.statements.map((one) => takenOver(one));
      const page = toHtml(
        { ...exam, statements },
        words === undefined ? {} : { words, language: german },
      );
      const sections = page.split('<section').filter((part) => part.includes(seen));
      expect(sections).toHaveLength(1);
      expect(sections[0]).toContain(heading);
      expect(sections[0]?.split(seen)).toHaveLength(statements.length + 1);
      expect(toHtml(exam)).not.toContain('taken-over');
    }
  });
});
