import { earsAndNose } from './pictures/ears-and-nose.ts';
import { eyesAndNerves } from './pictures/eyes-and-nerves.ts';
import { neckAndThroat } from './pictures/neck-and-throat.ts';
import { publishedSets } from './pictures/published-sets.ts';
import { skinAndLips } from './pictures/skin-and-lips.ts';

/**
 * Every picture of danger, by id. A new one is a row here, its German in `words/german.ts` and its
 * cases in the bank, which a test asks for.
 */
export const pictures = {
  ...eyesAndNerves,
  ...earsAndNose,
  ...neckAndThroat,
  ...skinAndLips,
  ...publishedSets,
} as const;

export type PictureId = keyof typeof pictures;
