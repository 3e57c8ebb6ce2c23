import { innerOf } from '../../read/bundle/element.ts';
import { ownCode } from '../../read/observation/concept.ts';
import { claimCommon, type Observed, type Reader } from '../../read/observation/observation.ts';
import { absentReasonOf } from '../../read/observation/reason.ts';
import { siteOf } from '../../read/observation/site.ts';
import { codingsOf, filled } from '../../read/observation/values.ts';
import type { FunctionTest } from './statement.ts';

export const functionTestReader: Reader<FunctionTest> = {
  of: ({ table, code }, { testPoints }) =>
    table === 'testPoints' && testPoints.get(code)?.group === 'function',
  read: (observed, key) => {
    const test = readTest(observed, key);
    return test && { kind: 'function-test', result: test.answer, ...test.shared };
  },
};

/** A test at a point: its answer, and what tests of movement and of function have in common. */
interface ReadTest {
  readonly answer: string;
  readonly shared: Pick<FunctionTest, 'test' | 'side' | 'reason' | 'codings'>;
}

export function readTest(observed: Observed, key: string | undefined): ReadTest | undefined {
  const { reading, element } = observed;
  const code = ownCode(reading, innerOf(element, 'code'), 'testPoints');
  if (code === undefined) return undefined;
  claimCommon(observed, key, { category: 'exam' });
  const side = siteOf(observed)?.side;
  const value = ownCode(reading, innerOf(element, 'valueCodeableConcept'), 'testResults');
  const absent = absentReasonOf(reading, innerOf(element, 'dataAbsentReason'), 'testResults');
  const answer = value?.code ?? absent?.state;
  if (answer === undefined) return undefined;
  const codings = filled(codingsOf(code.further));
  return {
    answer,
    shared: {
      test: code.code,
      ...(side !== undefined && { side }),
      ...(value === undefined && absent && { reason: absent.reason }),
      ...(codings && { codings }),
    },
  };
}
