import type { Lean, TestPoint } from '../../terminology/types.ts';
import { itemCodes } from '../../testing/formats/item.ts';
import {
  amounts,
  maybe,
  type Sampling,
  type Stated,
  sampleDetails,
  sampleReason,
} from '../../testing/sample/sampling.ts';
import { answer, type KindSample, untested } from '../facets/sample.ts';
import { drawFunctionTests } from '../function-test/sample.ts';
import { drawMovements } from '../movement/sample.ts';
import { drawComparison } from '../sensation-comparison/sample.ts';
import type { ModalityResult, Sensation } from './statement.ts';

export const sensationSample: KindSample<Sensation> = {
  drawn: {
    // Points of all groups are drawn together: sensation, its comparison, movements and functions.
    examined: (sampling) => () =>
      sampling.random
        .some([...sampling.catalogue.testPoints.values()], amounts[sampling.size].tests)
        .flatMap((point) => drawAtPoint[point.group](sampling, point)),
  },
  items: ({ point, side, results, at, note }) =>
    results.map(({ modality, result, reason }, index) => ({
      code: itemCodes.sensation(point, modality),
      side,
      value: answer(result, reason),
      at,
      note: index === 0 ? note : undefined,
    })),
  arrives: (sensation, _, work) => {
    const [first, ...more] = sensation.results.map((one) =>
      one.reason === undefined
        ? one
        : {
            ...one,
            result: untested(one.result, work),
            reason: work.without('reason', one.reason),
          },
    );
    return first === undefined ? sensation : { ...sensation, results: [first, ...more] };
  },
};

const drawAtPoint: {
  readonly [G in TestPoint['group']]: (sampling: Sampling, point: Lean<TestPoint>) => Stated[];
} = {
  sensation: sensationStatements,
  'facial-movement': drawMovements,
  movement: drawMovements,
  function: drawFunctionTests,
};

function sensationStatements(sampling: Sampling, point: Lean<TestPoint>): Stated[] {
  const { random } = sampling;
  const sides = random.chance(0.9)
    ? (['right', 'left'] as const)
    : [random.pick(['right', 'left'] as const)];
  const modalities = random.some(point.modalities ?? [], random.int(1, 2));
  const statements: Stated[] = sides.map((side) => ({
    kind: 'sensation',
    point: point.code,
    side,
    results: modalities.map((modality) => modalityResult(sampling, modality)),
    ...(maybe(sampling, 0.8) && { eyesClosed: random.chance(0.9) }),
    ...sampleDetails(sampling),
  }));
  const [modality] = modalities;
  if (modality !== undefined && maybe(sampling, 0.6)) {
    statements.push(drawComparison(sampling, point.code, modality));
  }
  return statements;
}

function modalityResult(sampling: Sampling, modality: string): ModalityResult {
  const { random, catalogue } = sampling;
  const rows = [...catalogue.sensationResults.values()].filter(
    (row) => row.modalities === undefined || row.modalities.includes(modality),
  );
  const usual = rows.filter((row) => row.usual === true);
  const row = random.pick(random.chance(0.75) ? usual : rows);
  return {
    modality,
    result: row.code,
    ...(row.untested === true && { reason: sampleReason(sampling, 'not-examined') }),
  };
}
