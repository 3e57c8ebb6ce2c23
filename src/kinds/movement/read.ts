import type { Reader } from '../../read/observation/observation.ts';
import { readTest } from '../function-test/read.ts';
import type { Movement } from './statement.ts';

export const movementReader: Reader<Movement> = {
  of: ({ table, code }, { testPoints }) => {
    if (table !== 'testPoints') return false;
    const group = testPoints.get(code)?.group;
    return group === 'movement' || group === 'facial-movement';
  },
  read: (observed, key) => {
    const test = readTest(observed, key);
    if (test === undefined) return undefined;
    const synkinesis = observed.components.flag('synkinesis');
    return {
      kind: 'movement',
      grade: test.answer,
      ...test.shared,
      ...(synkinesis !== undefined && { synkinesis }),
    };
  },
};
