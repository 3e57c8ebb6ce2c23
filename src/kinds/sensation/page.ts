import { type Content, joined, words } from '../../report/html.ts';
import { separated } from '../../report/page.ts';
import type { Teller } from '../../report/teller.ts';
import type { Reason } from '../facets/base.ts';
import type { KindPage } from '../facets/page.ts';
import { statesSomething } from '../registries/meanings.ts';
import type { Sensation } from './statement.ts';

/** A row a point, an answer a side, with the result of every modality. */
export const sensationPage: KindPage<Sensation> = {
  tell: (sensation, { teller }) => ({
    table: 'sensation',
    name: teller.subject(sensation),
    side: sensation.side,
    answer: separated(
      sensation.results.map(({ modality, result, reason }) =>
        modalityText(teller, modality, teller.display('sensationResults', result), reason),
      ),
    ),
  }),
  mark: (sensation, catalogue) => (statesSomething(sensation, catalogue) ? 'sign' : 'said'),
};

/** A modality, what it gave, and the reason where it gave nothing. */
export function modalityText(
  teller: Teller,
  modality: string,
  result: string,
  reason: Reason | undefined,
): Content {
  return joined(
    `${teller.display('modalities', modality)}: ${result}`,
    reason && joined(' (', words(teller.reason(reason)), ')'),
  );
}
