import { type Content, words } from '../../report/html.ts';
import { separated } from '../../report/page.ts';
import { answered, type Teller } from '../../report/teller.ts';
import type { Reason } from '../facets/base.ts';
import type { KindPage } from '../facets/page.ts';
import { statesSomething } from '../registries/meanings.ts';
import type { Movement } from './statement.ts';

export const movementPage: KindPage<Movement> = {
  tell: (movement, { teller }) => ({
    table: 'tests',
    name: teller.subject(movement),
    side: movement.side,
    answer: testAnswer(
      teller,
      movement.grade,
      movement.reason,
      movement.synkinesis !== undefined &&
        answered(teller.display('items', 'synkinesis'), teller.flag(movement.synkinesis)),
    ),
  }),
  mark: (movement, catalogue) =>
    movement.synkinesis === true || statesSomething(movement, catalogue) ? 'sign' : 'said',
};

/** The result of a test, what else was seen, and the reason where it was not done. */
export function testAnswer(
  teller: Teller,
  result: string,
  reason: Reason | undefined,
  seen?: Content,
): Content {
  return separated([
    teller.display('testResults', result),
    seen,
    reason && words(teller.reason(reason)),
  ]);
}
