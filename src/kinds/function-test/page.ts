import type { KindPage } from '../facets/page.ts';
import { testAnswer } from '../movement/page.ts';
import { statesSomething } from '../registries/meanings.ts';
import type { FunctionTest } from './statement.ts';

export const functionTestPage: KindPage<FunctionTest> = {
  tell: (test, { teller }) => ({
    table: 'tests',
    name: teller.subject(test),
    side: test.side,
    answer: testAnswer(teller, test.result, test.reason),
  }),
  mark: (test, catalogue) => (statesSomething(test, catalogue) ? 'sign' : 'said'),
};
