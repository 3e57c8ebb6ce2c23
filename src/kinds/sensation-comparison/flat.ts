import { reasonColumns, resultState } from '../../flat/answer.ts';
import type { Flat } from '../facets/flat.ts';
import type { SensationComparison } from './statement.ts';

export const comparisonFlat: Flat<SensationComparison> = {
  answers: ({ modality, result, reason }, [polarity]) => [
    { part: modality, state: resultState(polarity), answer: result, ...reasonColumns(reason) },
  ],
};
