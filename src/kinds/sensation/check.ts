import { resultChange, whenConfirmed } from '../../checks/compare/verdicts.ts';
import { cover, document, markMethods, sidesOf } from '../../checks/coverage/marks.ts';
import type { KindCheck } from '../facets/check.ts';
import type { Sensation } from './statement.ts';

/** Covers and is compared for each modality. */
export const sensationCheck: KindCheck<Sensation> = {
  cover: (sensation, marker) => {
    const { catalogue } = marker;
    const point = catalogue.testPoints.get(sensation.point);
    const sides = sidesOf(sensation.side, point?.laterality === 'paired');
    for (const { modality, result } of sensation.results) {
      const tested = catalogue.sensationResults.get(result)?.untested !== true;
      for (const side of sides) {
        const place = { kind: 'point', code: sensation.point, side, detail: modality } as const;
        if (tested) cover(marker, place, sensation);
        else document(marker, place, sensation);
      }
      const method = catalogue.modalities.get(modality)?.method;
      if (tested && point !== undefined && method !== undefined) {
        markMethods(marker, point.region, sides, sensation, [method]);
      }
    }
  },
  comparison: {
    variants: ({ results }) => results.map(({ modality }) => ({ modality })),
    change: whenConfirmed((now, before, { catalogue }) => {
      const resultOf = ({ statement, modality }: typeof now): string | undefined =>
        statement.results.find((one) => one.modality === modality)?.result;
      return resultChange('sensationResults', resultOf(now), resultOf(before), catalogue);
    }),
  },
};
