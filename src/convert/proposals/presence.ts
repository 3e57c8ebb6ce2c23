import { type Clause, hasDenial, isDenying, isSign } from './clauses.ts';
import type { Item } from './items.ts';

type Decided = 'present' | 'absent';

/**
 * Whether a sentence says that each sign of a clause is there or not; nothing where that is not certain.
 * Whatever is not one of a few plain forms stays open.
 */
export function presenceOf(
  sign: Item,
  clause: Clause,
  clauses: readonly Clause[],
): Decided | undefined {
  if (clauses.some(({ items }) => items.some(({ is }) => is === 'unknown'))) return undefined;
  // What is denied or affirmed without a sign of its own can be of any sign of the sentence.
  if (clauses.some(({ items }) => !items.some(isSign) && !isPlace(items))) return undefined;
  const { items } = clause;
  const denials = items.filter(isDenying);
  if (denials.length === 0) return affirmed(clause, clauses) ? 'present' : undefined;
  const first = items.find(isDenying);
  const behind = items.findIndex(isDenying) > items.findIndex(isSign);
  // "Noch Ptosis": still there, if nothing before it was denied.
  if (first === undefined || first.is === 'nor') return undefined;
  const denied = behind ? isDeniedBehind(sign, items) : isDeniedBefore(sign, items);
  return denied ? 'absent' : undefined;
}

/** Words that say where, or that all is as it should be there. */
const placing: ReadonlySet<Item['is']> = new Set(['side', 'region', 'filler', 'normal', 'colon']);

const sizing: ReadonlySet<Item['is']> = new Set(['number', 'length', 'filler', 'modifier']);

/** Only where, or only how large: a size on a side, as in "scar: right none, left 2 mm", is there. */
function isPlace(items: readonly Item[]): boolean {
  return [placing, sizing].some((kinds) => items.every(({ is }) => kinds.has(is)));
}

const plainBeside: ReadonlySet<Item['is']> = new Set([
  ...['sign', 'side', 'region', 'filler', 'modifier', 'number', 'length', 'affirmation', 'and'],
  'colon',
] as const);

function affirmed(clause: Clause, clauses: readonly Clause[]): boolean {
  if (!clause.items.every(({ is }) => plainBeside.has(is))) return false;
  const at = clauses.indexOf(clause);
  const says = clause.items.some(({ is }) => is === 'affirmation');
  const denied = clauses.map(({ items }) => hasDenial(items));
  const before = clauses
    .slice(0, at + 1)
    .map((one) => one.apart)
    .lastIndexOf(true);
  // "No scar, naevus" can deny both; a "but" between them ends the denial.
  if (!says && denied.slice(Math.max(0, before), at).some(Boolean)) return false;
  // "Scar, naevus: none" too.
  return says || !clauses.slice(at + 1).some(({ items }) => deniesBehind(items));
}

function deniesBehind(items: readonly Item[]): boolean {
  const denial = items.findIndex(isDenying);
  return denial >= 0 && denial > items.findIndex(isSign);
}

const skippedBefore: ReadonlySet<Item['is']> = new Set([
  ...['filler', 'modifier', 'evidence', 'region', 'side'],
] as const);
const behindDenied: ReadonlySet<Item['is']> = new Set([
  ...['filler', 'side', 'region', 'affirmation'],
] as const);

/** "No scar", "no evidence of scar or naevus": a denial, then signs that "or" and "nor" join. */
function isDeniedBefore(sign: Item, items: readonly Item[]): boolean {
  const start = items.findIndex(isDenying);
  // Before the denial only where it is: "right: no scar", "on the left no scar".
  if (!items.slice(0, start).every(({ is }) => placing.has(is))) return false;
  // What may come next: a sign that is waited for, or what joins the one before to another.
  let waits = true;
  for (const item of items.slice(start + 1)) {
    const joins = item.is === 'or' || item.is === 'nor';
    if (item.is === 'sign' || joins) {
      if (joins === waits) return false;
      waits = joins;
    } else if (!(waits ? skippedBefore : behindDenied).has(item.is)) {
      return false;
    }
  }
  return !waits && items.indexOf(sign) > start;
}

/** "Scar: none", "scar on the left not present": one sign, and what denies it at the end. */
function isDeniedBehind(sign: Item, items: readonly Item[]): boolean {
  if (items.filter(isSign).length !== 1) return false;
  const at = items.indexOf(sign);
  const denial = items.findIndex(isDenying);
  const before = items.slice(0, at).every(({ is }) => placing.has(is) || is === 'modifier');
  const between = items.slice(at + 1, denial).every(({ is }) => placing.has(is) && is !== 'normal');
  if (!before || !between) return false;
  const rest = items.slice(denial).map(({ is }) => is);
  const [first, second, ...more] = rest;
  const isWhere = (is: Item['is'] | undefined): boolean =>
    is === undefined || is === 'side' || is === 'region' || is === 'filler';
  if (first === 'not') return second === 'affirmation' && more.every(isWhere);
  if (first === 'denial') return second === undefined;
  return first === 'denial-behind' && isWhere(second) && more.every(isWhere);
}
