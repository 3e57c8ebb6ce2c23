import { lateralitySides } from '../../terminology/sides.ts';
import type { Lean, Region } from '../../terminology/types.ts';
import { itemCodes } from '../../testing/formats/item.ts';
import {
  amounts,
  type Sampling,
  type Stated,
  sampleDetails,
  sampleText,
  sitedRegions,
} from '../../testing/sample/sampling.ts';
import type { KindSample } from '../facets/sample.ts';
import type { Note } from './statement.ts';

export const noteSample: KindSample<Note> = {
  drawn: {
    referring: (sampling) => {
      const { random, size } = sampling;
      const regions = sitedRegions(sampling);
      return Array.from({ length: amounts[size].notes }, () =>
        noteStatement(sampling, random.chance(0.7) ? random.pick(regions) : undefined),
      );
    },
  },
  items: ({ region, side, text, at, note }) => [
    { at, note, code: itemCodes.note, region, side, value: { text } },
  ],
  arrives: (note, _, work) => ({ ...note, text: work.text(note.text) }),
};

/** A note on a region, or on the whole exam where none is given. */
function noteStatement(sampling: Sampling, region?: Lean<Region>): Stated {
  const { random } = sampling;
  const sides = lateralitySides[region?.laterality ?? 'whole'].sides;
  return {
    kind: 'note',
    text: sampleText(sampling),
    ...(region !== undefined && { region: region.code }),
    ...(random.chance(0.5) && { side: random.pick(sides) }),
    ...sampleDetails(sampling),
  };
}
