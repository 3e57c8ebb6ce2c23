import type { Side } from '../../model/primitive.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { Lean, TestPoint } from '../../terminology/types.ts';
import { itemCodes } from '../../testing/formats/item.ts';
import {
  type Sampling,
  type Stated,
  sampleDetails,
  sampleReason,
} from '../../testing/sample/sampling.ts';
import { answer, type KindSample, untested, withReason } from '../facets/sample.ts';
import type { FunctionTest } from './statement.ts';

export const functionTestSample: KindSample<FunctionTest> = {
  drawn: { drawnWith: 'sensation' },
  items: ({ test, side, result, reason, at, note }) => [
    { at, note, code: itemCodes.functionTest(test), side, value: answer(result, reason) },
  ],
  arrives: (test, _, work) =>
    test.reason === undefined
      ? test
      : { ...withReason(test, work), result: untested(test.result, work) },
};

/** What the statements of a test have alike, whatever their kind. */
type SharedResult = Pick<FunctionTest, 'test' | 'side' | 'reason'> &
  ReturnType<typeof sampleDetails>;

export function drawFunctionTests(sampling: Sampling, point: Lean<TestPoint>): Stated[] {
  return drawTests(sampling, point, (result, shared) => ({
    kind: 'function-test',
    result,
    ...shared,
  }));
}

/** A test with results, on each side or on both; `stating` makes the statement of its kind. */
export function drawTests(
  sampling: Sampling,
  point: Lean<TestPoint>,
  stating: (result: string, shared: SharedResult) => Stated,
): Stated[] {
  const { random } = sampling;
  const { sides, required } = lateralitySides[point.laterality];
  const wanted: readonly (Side | undefined)[] = required
    ? random.pick([['right', 'left'] as const, ['both'] as const])
    : [random.chance(0.7) ? undefined : random.pick(sides)];
  return wanted.map((side) => {
    const { code, ...shared } = drawResult(sampling, point, side);
    return stating(code, shared);
  });
}

function drawResult(
  sampling: Sampling,
  point: Lean<TestPoint>,
  side: Side | undefined,
): SharedResult & { readonly code: string } {
  const { random, catalogue } = sampling;
  const rows = (point.results ?? []).flatMap((code) => catalogue.testResults.get(code) ?? []);
  const usual = rows.filter((row) => row.usual === true);
  const row = random.pick(usual.length > 0 && random.chance(0.7) ? usual : rows);
  return {
    code: row.code,
    test: point.code,
    ...(side !== undefined && { side }),
    ...(row.untested === true && { reason: sampleReason(sampling, 'not-examined') }),
    ...sampleDetails(sampling),
  };
}
