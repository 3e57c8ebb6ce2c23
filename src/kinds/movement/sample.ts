import type { Lean, TestPoint } from '../../terminology/types.ts';
import { itemCodes } from '../../testing/formats/item.ts';
import { maybe, type Sampling, type Stated } from '../../testing/sample/sampling.ts';
import { answer, type KindSample, untested, withReason } from '../facets/sample.ts';
import { drawTests } from '../function-test/sample.ts';
import type { Movement } from './statement.ts';

export const movementSample: KindSample<Movement> = {
  drawn: { drawnWith: 'sensation' },
  items: ({ test, side, grade, reason, at, note }) => [
    { at, note, code: itemCodes.movement(test), side, value: answer(grade, reason) },
  ],
  arrives: (movement, _, work) =>
    movement.reason === undefined
      ? movement
      : { ...withReason(movement, work), grade: untested(movement.grade, work) },
};

export function drawMovements(sampling: Sampling, point: Lean<TestPoint>): Stated[] {
  return drawTests(sampling, point, (grade, shared) => ({
    kind: 'movement',
    grade,
    ...shared,
    ...(point.group === 'facial-movement' &&
      maybe(sampling, 0.1) && { synkinesis: sampling.random.chance(0.3) }),
  }));
}
