import { itemCodes } from '../../testing/formats/item.ts';
import {
  type Sampling,
  type Stated,
  sampleDetails,
  sampleReason,
} from '../../testing/sample/sampling.ts';
import { answer, type KindSample, withReason } from '../facets/sample.ts';
import type { SensationComparison } from './statement.ts';

export const comparisonSample: KindSample<SensationComparison> = {
  drawn: { drawnWith: 'sensation' },
  items: ({ point, modality, result, reason, at, note }) => [
    { at, note, code: itemCodes.comparison(point, modality), value: answer(result, reason) },
  ],
  arrives: (comparison, _, work) => withReason(comparison, work),
};

/** The patient's comparison of the sides at a point of which the sensation was tested. */
export function drawComparison(sampling: Sampling, point: string, modality: string): Stated {
  const { random } = sampling;
  const result = random.pick([
    'equal',
    'equal',
    'right-less',
    'left-less',
    'not-compared',
  ] as const);
  return {
    kind: 'sensation-comparison',
    point,
    modality,
    result,
    ...(result === 'not-compared' && { reason: sampleReason(sampling, 'not-examined') }),
    ...sampleDetails(sampling),
  };
}
