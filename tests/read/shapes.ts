import { asserted } from './shapes/asserted.ts';
import { denied } from './shapes/denied.ts';
import { keptInWords } from './shapes/kept-in-words.ts';
import { notRead } from './shapes/not-read.ts';
import type { Shape } from './shapes/shape.ts';
import { sidedShapes } from './shapes/sided.ts';

/**
 * Findings of others in the shapes that are published for them. What the finding is comes from the
 * mapping tables; each shape names the publication that has it.
 */
export const shapes: readonly Shape[] = [
  ...asserted,
  ...sidedShapes,
  ...denied,
  ...keptInWords,
  ...notRead,
];
