import type { KindPage } from '../facets/page.ts';
import { testAnswer } from '../movement/page.ts';
import type { FunctionTest } from './statement.ts';

export const functionTestPage: KindPage<FunctionTest> = {
  tell: (test, { teller }) => ({
    table: 'tests',
    name: teller.subject(test),
    side: test.side,
    answer: testAnswer(teller, test.result, test.reason),
  }),
};
