import { snomedConcepts } from '../tables/snomed.ts';
import { untagged } from './published-names.ts';

/** Look-up of a published set of SNOMED CT ids; see the subpath terminology/free-set. */
export interface FreeSet {
  /** Version of the published set. */
  readonly version: string;
  /** Number of ids. */
  readonly size: number;
  /** Whether the set holds the id. */
  readonly has: (id: string) => boolean;
}

const concepts: ReadonlyMap<string, (typeof snomedConcepts)[number]> = /*@__PURE__*/ new Map(
  snomedConcepts.map((concept) => [concept.id, concept]),
);

/**
 * A display for an id of our tables: the fully specified name without its semantic tag. It is
 * derived only from names published under CC BY 4.0, which allows it; other ids have no display.
 */
export function snomedDisplay(id: string): string | undefined {
  const concept = concepts.get(id);
  const name = concept?.set === 'gps-2020-09' ? concept.fsn : undefined;
  return name === undefined ? undefined : untagged(name);
}

/** True for ids of our tables that are in the Global Patient Set as published in 2020-09. */
export function isFreeSnomed(id: string): boolean {
  return concepts.get(id)?.set === 'gps-2020-09';
}
