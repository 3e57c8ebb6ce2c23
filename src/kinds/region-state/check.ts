import { alike, otherExceptions, whenConfirmed } from '../../checks/compare/verdicts.ts';
import { cover, document, markMethods, sidesIn } from '../../checks/coverage/marks.ts';
import { methodsMeet } from '../../checks/facts/signs.ts';
import { sameExceptions } from '../../checks/places/exceptions.ts';
import type { KindCheck } from '../facets/check.ts';
import type { RegionState } from './statement.ts';

export const regionStateCheck: KindCheck<RegionState> = {
  cover: (state, marker) => {
    const sides = sidesIn(marker, state.region, state.side);
    const part = state.state === 'partial';
    for (const side of sides) {
      const place = { kind: 'region', code: state.region, side } as const;
      if (isExamined(state)) cover(marker, place, state, part);
      else document(marker, place, state);
    }
    if (isExamined(state)) {
      markMethods(marker, state.region, sides, state, state.methods ?? [], part);
    }
  },
  comparison: {
    change: whenConfirmed(({ statement: now }, { statement: before }) => {
      if (!isExamined(now) || !isExamined(before)) {
        return { change: 'not-comparable', reason: 'the region was not examined in both' };
      }
      if (!methodsMeet(now.methods, before.methods))
        return { change: 'not-comparable', reason: 'methods differ' };
      if (now.state === before.state) {
        return sameExceptions(now, before) ? alike : otherExceptions;
      }
      return { change: 'changed', values: { before: before.state, now: now.state } };
    }),
  },
};

function isExamined({ state }: RegionState): boolean {
  return state === 'normal' || state === 'abnormal' || state === 'partial';
}
