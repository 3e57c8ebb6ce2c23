import type { ExceptedPlace } from '../../kinds/facets/base.ts';
import type { Finding, RegionState } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { ExamIndex } from '../exam-index.ts';
import { methodsMeet } from '../facts/signs.ts';
import { isWithin } from './regions.ts';
import { sidesOverlap } from './sides.ts';

/** Whether a statement leaves a place out by name, or by the name of a place that holds it. */
export function excepts(
  catalogue: Catalogue,
  statement: Finding | RegionState,
  place: ExceptedPlace,
): boolean {
  return exceptionsOf(statement).some(
    (one) =>
      isWithin(catalogue, place.region, one.region) &&
      (one.side === undefined || place.side === undefined || sidesOverlap(one.side, place.side)),
  );
}

export function exceptionsOf(statement: Finding | RegionState): readonly ExceptedPlace[] {
  return ('except' in statement ? statement.except : undefined) ?? [];
}

/**
 * Whether what is said of a group does not settle a place in it: the place, one that holds it or one
 * within it is left out by name, was not examined, or only in part.
 */
export function leavesOpen(
  { catalogue, index }: { readonly catalogue: Catalogue; readonly index: ExamIndex },
  group: Finding | RegionState,
  place: ExceptedPlace,
): boolean {
  const meets = (other: ExceptedPlace): boolean =>
    sidesOverlap(other.side, place.side) &&
    (isWithin(catalogue, place.region, other.region) ||
      isWithin(catalogue, other.region, place.region));
  return (
    exceptionsOf(group).some(meets) ||
    openMembers(catalogue, index.all('region-state'), group).some(
      (one) => one.state !== 'not-applicable' && meets(one),
    )
  );
}

/** States of members of the place of a statement that say that they were not seen, or not whole. */
export function openMembers(
  catalogue: Catalogue,
  states: readonly RegionState[],
  group: Finding | RegionState,
): readonly RegionState[] {
  if (catalogue.regions.get(group.region)?.group !== true) return [];
  return states.filter(
    (one) =>
      (one.state === 'not-examined' || one.state === 'partial' || one.state === 'not-applicable') &&
      one.region !== group.region &&
      isWithin(catalogue, one.region, group.region) &&
      sidesOverlap(one.side, group.side) &&
      methodsMeet(one.methods, group.methods),
  );
}

export function sameExceptions(a: Finding | RegionState, b: Finding | RegionState): boolean {
  return exceptionText(a) === exceptionText(b);
}

function exceptionText(statement: Finding | RegionState): string {
  return exceptionsOf(statement)
    .map(({ region, side = '' }) => `${region} ${side}`)
    .sort()
    .join('; ');
}
