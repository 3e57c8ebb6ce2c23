import { freeSetGaps, freeSetSize, freeSetVersion } from '../tables/free-set-ids.ts';
import { isSnomedId } from './check-digits.ts';
import { GAP_DIGITS } from './gap-digits.ts';
import type { FreeSet } from './snomed.ts';

const items: ReadonlyMap<string, ReadonlySet<number>> = /*@__PURE__*/ new Map(
  Object.entries(freeSetGaps).map(([partition, gaps]) => [partition, itemsOf(gaps)]),
);

/**
 * Every SNOMED CT id of the Global Patient Set as published in September 2020 under CC BY 4.0, to be
 * given to `toBundle` and `licenceIssues`. It is a list of ids and nothing else: no names and no
 * hierarchy, and whether a concept is active today it does not say.
 * @see http://terminology.hl7.org/ValueSet/snomed-intl-gps
 */
export const freeSet: FreeSet = {
  version: freeSetVersion,
  size: freeSetSize,
  has: (id) => {
    if (!isSnomedId(id)) return false;
    return items.get(id.slice(-3, -1))?.has(Number(id.slice(0, -3))) === true;
  },
};

function itemsOf(gaps: string): Set<number> {
  const found = new Set<number>();
  let item = 0;
  let gap = 0;
  for (const letter of gaps) {
    const digit = GAP_DIGITS.indexOf(letter);
    gap = gap * 32 + (digit % 32);
    if (digit >= 32) continue;
    item += gap;
    found.add(item);
    gap = 0;
  }
  return found;
}
