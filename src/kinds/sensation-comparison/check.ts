import { resultChange, whenConfirmed } from '../../checks/compare/verdicts.ts';
import type { KindCheck } from '../facets/check.ts';
import type { SensationComparison } from './statement.ts';

/** What the patient felt on both sides says nothing of what was examined. */
export const comparisonCheck: KindCheck<SensationComparison> = {
  comparison: {
    variants: ({ modality }) => [{ modality }],
    change: whenConfirmed(({ statement: now }, { statement: before }, { catalogue }) =>
      resultChange('testResults', compared(now), compared(before), catalogue),
    ),
  },
};

function compared({ result }: SensationComparison): string | undefined {
  return result === 'not-compared' ? undefined : result;
}
