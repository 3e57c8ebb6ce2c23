import type { Statement } from '../../model/statement.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { Lean, Region } from '../../terminology/types.ts';
import {
  amounts,
  maybe,
  type Sampling,
  type Stated,
  sampleDetails,
  sampleText,
  sitedRegions,
} from '../../testing/sample/sampling.ts';
import type { KindSample } from '../facets/sample.ts';
import { presentIn } from '../finding/sample.ts';
import type { Image } from './statement.ts';

/** No item can say a picture. */
export const imageSample: KindSample<Image> = {
  drawn: {
    referring: (sampling, statements) => {
      const regions = sitedRegions(sampling);
      const present = presentIn(statements);
      return Array.from({ length: amounts[sampling.size].images }, () =>
        imageStatement(sampling, sampling.random.pick(regions), present),
      );
    },
  },
  items: () => [],
  arrives: { lost: 'images' },
};

export function isPicture(statement: Statement): statement is Image {
  return statement.kind === 'image';
}

function imageStatement(
  sampling: Sampling,
  region: Lean<Region>,
  shown: readonly Statement[],
): Stated {
  const { random } = sampling;
  const about = random.some(shown, random.int(0, 3)).map(({ key }) => key);
  return {
    kind: 'image',
    region: region.code,
    ...(random.chance(0.6) && { side: random.pick(lateralitySides[region.laterality].sides) }),
    title: sampleText(sampling),
    contentType: random.pick(['image/jpeg', 'image/png', 'image/svg+xml']),
    url: `https://clinic.example/pictures/${random.int(1, 99999)}?size=full&v=1`,
    consent: random.pick(['given', 'given', 'refused', 'not-asked'] as const),
    ...(maybe(sampling, 0.5) && { scaleBar: random.chance(0.7) }),
    ...(maybe(sampling, 0.3) && { purpose: sampleText(sampling) }),
    ...(about.length > 0 && { about }),
    ...sampleDetails(sampling),
  };
}
