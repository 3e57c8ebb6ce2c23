import type { Side } from '../../model/primitive.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { Lean, TestPoint } from '../../terminology/types.ts';
import { itemCodes } from '../../testing/formats/item.ts';
import {
  maybe,
  type Sampling,
  type Stated,
  sampleDetails,
  sampleReason,
} from '../../testing/sample/sampling.ts';
import { answer, type KindSample, untested, withReason } from '../sample.ts';
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

/** A movement or function test, on each side or on both. */
export function drawTests(sampling: Sampling, point: Lean<TestPoint>): Stated[] {
  const { random } = sampling;
  const { sides, required } = lateralitySides[point.laterality];
  const wanted: readonly (Side | undefined)[] = required
    ? random.pick([['right', 'left'] as const, ['both'] as const])
    : [random.chance(0.7) ? undefined : random.pick(sides)];
  return wanted.map((side) => resultStatement(sampling, point, side));
}

function resultStatement(
  sampling: Sampling,
  point: Lean<TestPoint>,
  side: Side | undefined,
): Stated {
  const { random, catalogue } = sampling;
  const rows = (point.results ?? []).flatMap((code) => catalogue.testResults.get(code) ?? []);
  const usual = rows.filter((row) => row.usual === true);
  const row = random.pick(usual.length > 0 && random.chance(0.7) ? usual : rows);
  const shared = {
    test: point.code,
    ...(side !== undefined && { side }),
    ...(row.untested === true && { reason: sampleReason(sampling, 'not-examined') }),
    ...sampleDetails(sampling),
  };
  if (point.group === 'function') return { kind: 'function-test', result: row.code, ...shared };
  return {
    kind: 'movement',
    grade: row.code,
    ...shared,
    ...(point.group === 'facial-movement' &&
      maybe(sampling, 0.1) && { synkinesis: random.chance(0.3) }),
  };
}
