import { alike, whenConfirmed } from '../../checks/compare/verdicts.ts';
import { coverAsMeasure, sidesOf } from '../../checks/coverage/marks.ts';
import type { KindCheck } from '../facets/check.ts';
import { trackingOfFinding } from '../finding/check.ts';
import type { ScaleScore } from './statement.ts';

export const scaleScoreCheck: KindCheck<ScaleScore> = {
  cover: (score, marker) => {
    const laterality = marker.catalogue.scales.get(score.scale)?.laterality;
    coverAsMeasure(marker, score, score.scale, sidesOf(score.side, laterality === 'paired'));
  },
  comparison: {
    tracking: ({ about }, index) => trackingOfFinding(about, index),
    change: whenConfirmed(({ statement: now }, { statement: before }) => {
      if (now.version !== before.version) {
        return { change: 'not-comparable', reason: 'the versions of the scale differ' };
      }
      if (now.score === before.score) return alike;
      const values = { before: String(before.score), now: String(now.score) };
      return { change: 'changed', values };
    }),
  },
};
