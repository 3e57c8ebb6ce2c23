import { isState, reasonOf, unknownWord } from '../../convert/build/built.ts';
import type { ComparisonTarget } from '../../convert/mapping/target.ts';
import { notDone, type StatementConversion, type TargetConversion } from '../facets/conversion.ts';
import { noModality } from '../sensation/convert.ts';
import type { SensationComparison } from './statement.ts';

const comparisons: readonly string[] = [
  'equal',
  'right-less',
  'left-less',
  'not-compared',
] satisfies SensationComparison['result'][];

export const comparisonConversion: StatementConversion<SensationComparison> = {
  about: ({ point, modality }) => [point, modality],
};

export const comparisonTarget: TargetConversion<ComparisonTarget> = {
  codes: ({ point }) => [['testPoints', point, 'point']],
  home: ({ point }, catalogue) => catalogue.testPoints.get(point)?.region,
  laterality: () => undefined,
  sideOpen: true,
  needs: 'modality',
  meanings: () => ['equal', 'right-less', 'left-less'],
  states: notDone,
  build: ({ target }, reading) => {
    const { modality = target.modality, meaning, at } = reading;
    if (modality === undefined) return noModality;
    const shared = {
      kind: 'sensation-comparison' as const,
      point: target.point,
      modality,
      ...(at !== undefined && { at }),
    };
    if (isState(meaning)) {
      return { statements: [{ ...shared, result: 'not-compared', reason: reasonOf(meaning) }] };
    }
    if (!isComparison(meaning))
      return unknownWord({ reason: 'one-of', codes: ['equal', 'right-less', 'left-less'] });
    return { statements: [{ ...shared, result: meaning }] };
  },
};

function isComparison(meaning: unknown): meaning is SensationComparison['result'] {
  return typeof meaning === 'string' && comparisons.includes(meaning);
}
