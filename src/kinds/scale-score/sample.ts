import { lateralitySides } from '../../terminology/sides.ts';
import type { Lean, Scale } from '../../terminology/types.ts';
import { itemCodes } from '../../testing/formats/item.ts';
import {
  amounts,
  type Sampling,
  type Stated,
  sampleDetails,
} from '../../testing/sample/sampling.ts';
import { aboutFinding, type KindSample } from '../facets/sample.ts';
import { presentIn } from '../finding/sample.ts';
import type { Finding } from '../finding/statement.ts';
import type { ScaleItem, ScaleScore } from './statement.ts';

export const scaleScoreSample: KindSample<ScaleScore> = {
  drawn: {
    referring: (sampling, statements) => {
      const [lesion] = presentIn(statements);
      return sampling.random
        .some([...sampling.catalogue.scales.values()], amounts[sampling.size].scales)
        .map((scale) => scaleStatement(sampling, scale, lesion));
    },
  },
  items: ({ scale, version, region, side, score, at, note, about }, groups) => [
    {
      code: itemCodes.scale(scale, version),
      region,
      side,
      value: typeof score === 'number' ? { count: score } : { word: score },
      at,
      note,
      group: groups.get(about ?? ''),
    },
  ],
  arrives: aboutFinding,
};

function scaleStatement(
  sampling: Sampling,
  scale: Lean<Scale>,
  lesion: Finding | undefined,
): Stated {
  const { random, catalogue } = sampling;
  const sited = random.chance(0.5) ? catalogue.regions.get(scale.region) : undefined;
  const { sides, required } = lateralitySides[sited?.laterality ?? scale.laterality];
  const items = scale.items ?? [];
  const given = random.some(items, random.int(0, items.length));
  return {
    kind: 'scale-score',
    scale: scale.code,
    version: random.pick(scale.versions),
    score:
      scale.type === 'ordinal'
        ? random.pick(scale.grades ?? []).code
        : random.int(0, scale.max ?? 10),
    ...(sited !== undefined && { region: sited.code }),
    ...((required || random.chance(0.2)) && { side: random.pick(sides) }),
    ...(given.length > 0 && {
      items: given.map(
        ({ code, max }): ScaleItem => ({
          item: code,
          value: max === undefined ? random.chance(0.5) : random.int(0, max),
        }),
      ),
    }),
    ...(scale.region === 'skin' && lesion !== undefined && { about: lesion.key }),
    ...sampleDetails(sampling),
  };
}
