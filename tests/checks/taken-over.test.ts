import { describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import type { RuleResult } from '../../src/checks/rule.ts';
import type { Statement } from '../../src/model/statement.ts';
import { germanWords, toHtml } from '../../src/report/index.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { examOf, examStart } from './rules/rule-cases.ts';
import {
  expectNothing,
  expectNothingMore,
  lackingIn,
  outcomes,
  ruleCases,
  seen,
  takenOver,
} from './taken-over.ts';

/** The first case of each file fires; `npm run test:slow` takes every case, example and seeded exams. */
const cases = ruleCases.map(([name, several]) => [name, several.slice(0, 1)] as const);
const exams = [...cases, ['an example', [...examples.values()].slice(0, 1)] as const];

describe('what was taken over and not looked at again', () => {
  it.each(exams)('beside what %s state concludes nothing more', (_name, several) => {
    for (const exam of several) expectNothingMore(exam);
  });

  it.each(exams)('instead of what %s state concludes nothing', (_name, several) => {
    for (const exam of several) expectNothing(exam);
  });

  it('is what a rule says that it lacks', () => {
    const some = cases.filter(([name]) => /^R1[67]/.test(name)).flatMap(([, several]) => several);
    expect(some.reduce((sum, exam) => sum + lackingIn(exam), 0)).toBeGreaterThan(3);
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
    for (const exam of [...examples.values()].slice(0, 1)) {
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
