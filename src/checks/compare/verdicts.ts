import { isUnconfirmed } from '../../kinds/facets/base.ts';
import type { Compared, ComparedBy, Verdict } from '../../kinds/facets/check.ts';
import type { Statement } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';

export const alike: Verdict = {
  change: 'same',
  reason: 'stated alike in both; unchanged is said of measurements alone',
};

/** Both say the same, and not of the same places. */
export const otherExceptions: Verdict = {
  change: 'not-comparable',
  reason: 'the places excepted are not the same in both',
};

/** A change that is claimed only of what was stated anew, or looked at again. */
export function whenConfirmed<S extends Statement>(
  change: (now: Compared<S>, before: Compared<S>, by: ComparedBy) => Verdict,
): (now: Compared<S>, before: Compared<S>, by: ComparedBy) => Verdict {
  return (now, before, by) =>
    isUnconfirmed(now.statement)
      ? { change: 'not-comparable', reason: 'carried over and not confirmed' }
      : change(now, before, by);
}

/** Change of a result that is a code; undefined where there is none. */
export function resultChange(
  table: 'sensationResults' | 'testResults',
  now: string | undefined,
  before: string | undefined,
  catalogue: Catalogue,
): Verdict {
  const tested = (code: string): boolean => catalogue[table].get(code)?.untested !== true;
  if (now === undefined || before === undefined || !tested(now) || !tested(before)) {
    return { change: 'not-comparable', reason: 'it was not tested in both' };
  }
  return now === before ? alike : { change: 'changed', values: { before, now } };
}
