import { itemCodes } from '../../testing/formats/item.ts';
import { answer, type KindSample, untested, withReason } from '../sample.ts';
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
