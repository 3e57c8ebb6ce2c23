import { alike, whenConfirmed } from '../../checks/compare/verdicts.ts';
import type { Statement } from '../../model/statement.ts';
import type { KindCheck } from '../facets/check.ts';
import type { Symptom } from './statement.ts';

/** A complaint says nothing of what was examined. */
export const symptomCheck: KindCheck<Symptom> = {
  comparison: {
    change: whenConfirmed(({ statement: now }, { statement: before }) => {
      const clear = (one: Symptom): boolean => one.answer === 'yes' || one.answer === 'no';
      if (!clear(now) || !clear(before)) {
        return { change: 'not-comparable', reason: 'there is no clear answer in one of the exams' };
      }
      if (now.answer !== before.answer) return { change: now.answer === 'yes' ? 'new' : 'gone' };
      const [a, b] = [before.severity, now.severity];
      if (a === undefined || b === undefined || a === b) return alike;
      return { change: 'changed', values: { before: String(a), now: String(b) } };
    }),
  },
};

export function isSymptom(statement: Statement | undefined): statement is Symptom {
  return statement?.kind === 'symptom';
}
