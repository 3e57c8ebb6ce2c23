import { statesSomething } from '../meanings.ts';
import type { KindPage } from '../page.ts';
import { modalityText } from '../sensation/page.ts';
import type { SensationComparison } from './statement.ts';

/** The patient's own comparison, in a row below the sensations and in the column without a side. */
export const comparisonPage: KindPage<SensationComparison> = {
  tell: (comparison, { teller, labels }) => ({
    table: 'sensation',
    name: `${labels.compared} ${teller.subject(comparison)}`,
    side: undefined,
    answer: modalityText(
      teller,
      comparison.modality,
      teller.answer('comparison', comparison.result),
      comparison.reason,
    ),
  }),
  mark: (comparison, catalogue) => (statesSomething(comparison, catalogue) ? 'sign' : 'said'),
};
