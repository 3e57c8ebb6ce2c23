import type { Code, Side } from '../../model/primitive.ts';
import { isWithin } from '../../model/rules/places.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { type Clause, isSign } from './clauses.ts';
import type { Item } from './items.ts';

type SideItem = Item & { readonly is: 'side' };

/** What a sentence can tell of the side of one sign. */
export interface SideQuestion {
  readonly sign: Item;
  /** Regions in which the sign can be. */
  readonly places: readonly Code[];
  readonly clause: Clause;
  readonly clauses: readonly Clause[];
  /** Side of the heading above. */
  readonly heading?: Side;
}

/**
 * The side that a sentence says of a sign; nothing where that is not certain. A side counts where it
 * stands with the sign or with a place where the sign can be, and no other sign lies between; two
 * different sides in one clause count only where each of its signs has its own.
 */
export function sideOf(question: SideQuestion, catalogue: Catalogue): Side | undefined {
  const { clause, clauses, heading } = question;
  if (clauses.some(({ items }) => items.some(({ is }) => is === 'unknown'))) return undefined;
  const all = clauses.flatMap(({ items }) => items.filter(isSide));
  const distinct = new Set(all.map(({ side }) => side.side));
  if (all.length === 0) return heading;
  // A clause of a side alone, as in "scar right, left", can be of any sign.
  const stray = clauses.some(
    ({ items }) =>
      items.some(isSide) && !items.some(isSign) && !items.some(({ is }) => is === 'normal'),
  );
  if (stray) return undefined;
  const own = clause.items.filter(isSide);
  const label = labelSide(clauses[0]);
  const isLabel = own.length === 0 ? distinct.size === 1 : own.length === 1 && own[0] === label;
  if (label !== undefined && isLabel) {
    return fits(label, question, catalogue) ? label.side.side : undefined;
  }
  return trails(question, own) ? undefined : ownSide(question, own, catalogue);
}

/** "Ptosis without ectropion on the left": the side can be of both. */
function trails({ sign, clause, clauses }: SideQuestion, own: readonly SideItem[]): boolean {
  const { items } = clause;
  if (items[0]?.is !== 'without') return false;
  const before = clauses[clauses.indexOf(clause) - 1];
  return (
    before?.items.some(isSide) === false &&
    own.every((side) => items.indexOf(side) > items.indexOf(sign))
  );
}

/** The side that stands with a sign in its own clause. */
function ownSide(
  question: SideQuestion,
  own: readonly SideItem[],
  catalogue: Catalogue,
): Side | undefined {
  const { sign, clause } = question;
  const isAttached = (side: SideItem, to: Item): boolean =>
    attached(side, to, clause.items, question, catalogue);
  const [only, other] = own.filter((side) => isAttached(side, sign));
  if (only === undefined || !fits(only, question, catalogue)) return undefined;
  if (new Set(own.map(({ side }) => side.side)).size === 1) return only.side.side;
  const signs = clause.items.filter(isSign);
  const isEach = own.every((one) => signs.filter((to) => isAttached(one, to)).length === 1);
  return other === undefined && isEach && own.length === signs.length ? only.side.side : undefined;
}

function isSide(item: Item): item is SideItem {
  return item.is === 'side';
}

/** "Right: ...", "Right eye: ...": the side before the first colon, where no sign stands there. */
function labelSide(clause: Clause | undefined): SideItem | undefined {
  const items = clause?.items ?? [];
  const colon = items.findIndex(({ is }) => is === 'colon');
  const label = items.slice(0, Math.max(0, colon));
  const sides = label.filter(isSide);
  return sides.length === 1 && label.every(({ is }) => ['side', 'region', 'filler'].includes(is))
    ? sides[0]
    : undefined;
}

/** `OD` is said of eyes alone. */
function fits({ side }: SideItem, { places }: SideQuestion, catalogue: Catalogue): boolean {
  const { of } = side;
  return of === undefined || places.every((place) => isWithin(place, of, catalogue));
}

const between: ReadonlySet<Item['is']> = new Set([
  ...['filler', 'modifier', 'number', 'length', 'denial', 'without', 'evidence', 'colon', 'region'],
  ...['affirmation', 'denial-behind', 'not'],
] as const);

function attached(
  side: SideItem,
  sign: Item,
  items: readonly Item[],
  { places }: SideQuestion,
  catalogue: Catalogue,
): boolean {
  const [at, to] = [items.indexOf(side), items.indexOf(sign)];
  const path = items.slice(Math.min(at, to) + 1, Math.max(at, to));
  const isPlace = (item: Item): boolean =>
    item.is === 'region' &&
    item.codes.some((code) => places.some((place) => meet(place, code, catalogue)));
  if (!path.every((item) => (item.is === 'region' ? isPlace(item) : between.has(item.is)))) {
    return false;
  }
  // "Left of", "to the right", "nach links": not the side of what stands beside it.
  if (turns(items[at + 1]) && !isPlaceAfter(items, at, isPlace)) return false;
  if (items.slice(Math.max(0, at - 2), at).some((item) => item.is === 'filler' && item.turns)) {
    if (!isPlaceAfter(items, at, isPlace)) return false;
  }
  if (at < to) {
    const telling = items.slice(0, at).filter(({ is }) => is !== 'filler' && is !== 'modifier');
    const before = telling.at(-1);
    return (
      before === undefined ||
      ['and', 'or', 'nor', 'colon', 'denial', 'without', 'evidence'].includes(before.is)
    );
  }
  const after = items.slice(at + 1).find((item) => item.is !== 'filler' && !isPlace(item));
  return after === undefined || !['sign', 'region', 'modifier'].includes(after.is);
}

function turns(item: Item | undefined): boolean {
  return item?.is === 'filler' && item.turns;
}

/** "Of the left cheek", "vom rechten Oberlid": the side is that of a place where the sign can be. */
function isPlaceAfter(
  items: readonly Item[],
  at: number,
  isPlace: (item: Item) => boolean,
): boolean {
  const next = items[at + 1];
  return next !== undefined && isPlace(next);
}

/** Two regions of which one lies in the other. */
export function meet(one: Code, other: Code, catalogue: Catalogue): boolean {
  return isWithin(one, other, catalogue) || isWithin(other, one, catalogue);
}
