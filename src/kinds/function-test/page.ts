import { statesSomething } from '../meanings.ts';
import { testAnswer } from '../movement/page.ts';
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
