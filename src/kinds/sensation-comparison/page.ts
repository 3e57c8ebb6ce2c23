import type { KindPage } from '../facets/page.ts';
import { statesSomething } from '../registries/meanings.ts';
import { modalityText } from '../sensation/page.ts';
import type { SensationComparison } from './statement.ts';

/** The patient's own comparison: its answer names the side that felt less, so it has none of its own. */
export const comparisonPage: KindPage<SensationComparison> = {
  tell: (comparison, { teller }) => ({
    table: 'sensation',
    name: teller.subject(comparison),
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
