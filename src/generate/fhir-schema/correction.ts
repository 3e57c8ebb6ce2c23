import type { Comparison } from './elements.ts';
import type { Published } from './sources.ts';
import type { Definitions } from './types.ts';

/** One departure from the published schema. */
export interface Correction {
  readonly id: string;
  readonly reason: string;
  /** Changes the definitions; the answer is the number of places changed. */
  run(definitions: Definitions, source: Published, compared: Comparison): number | Promise<number>;
}
