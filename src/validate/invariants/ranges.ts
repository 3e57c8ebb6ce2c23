import { decimalText } from '../../fhir/json/decimal.ts';
import { UCUM } from '../../fhir/names/systems.ts';
import { boundary, notAfter, parseDateTime } from '../data-types/date-time.ts';
import { factorBetween } from '../terminology/ucum.ts';
import { isObject, type JsonObject } from '../walk/json.ts';
import { beforeR5, type Invariant, rules } from './invariant.ts';

/** Invariants that compare two ends. */
export const rangeInvariants: readonly Invariant[] = [
  ...rules(beforeR5, [
    ['per-1', 'the start is not shown to be at or before the end', (it) => inOrder(it)],
    ['rng-2', 'low is not shown to be at or below high', (it) => lowFirst(it, 'low', 'high')],
  ]),
  ...rules(
    ['R4B'],
    [
      [
        'inv-2',
        'the low numerator is not shown to be at or below the high one',
        (it) => lowFirst(it, 'lowNumerator', 'highNumerator'),
      ],
    ],
  ),
  ...rules(
    ['R5'],
    [
      ['per-1', 'the start is after the end', (it) => boundariesInOrder(it)],
      ['rng-2', 'low is above high', (it) => lowNotAbove(it, 'low', 'high')],
      [
        'ratrng-2',
        'the low numerator is above the high one',
        (it) => lowNotAbove(it, 'lowNumerator', 'highNumerator'),
      ],
    ],
  ),
];

/** R4 asks for `start <= end`, which is not true where one of the two is less precise. */
function inOrder({ start, end }: JsonObject): boolean {
  if (typeof start !== 'string' || typeof end !== 'string') return true;
  if (areAlike(start, end)) return start <= end;
  const [from, to] = [parseDateTime(start), parseDateTime(end)];
  return from === undefined || to === undefined || notAfter(from, to) === true;
}

/** Times of the same form and zone are in the order of their texts. */
function areAlike(one: string, other: string): boolean {
  return one.length === other.length && one.slice(19) === other.slice(19);
}

/** R5 lets the start be as early and the end as late as their precision allows. */
function boundariesInOrder({ start, end }: JsonObject): boolean {
  if (typeof start !== 'string' || typeof end !== 'string') return true;
  if (areAlike(start, end) && start <= end) return true;
  const [from, to] = [parseDateTime(start), parseDateTime(end)];
  if (from === undefined || to === undefined) return true;
  // Two days are of one calendar, and not of places half a world apart.
  if (from.zone === undefined && to.zone === undefined) return notAfter(from, to) !== false;
  return boundary(from, 'low') <= boundary(to, 'high');
}

function lowFirst(it: JsonObject, lowName: string, highName: string): boolean {
  const [low, high] = [it[lowName], it[highName]];
  if (!isObject(low) || !isObject(high)) return true;
  const factor = comparable(low, high);
  if (typeof low['value'] !== 'number' || typeof high['value'] !== 'number') return false;
  return factor !== undefined && low['value'] * factor <= high['value'];
}

function lowNotAbove(it: JsonObject, lowName: string, highName: string): boolean {
  const [low, high] = [it[lowName], it[highName]];
  if (!isObject(low) || !isObject(high)) return true;
  if (typeof low['value'] !== 'number' || typeof high['value'] !== 'number') return true;
  const factor = comparable(low, high);
  if (factor === undefined) return true;
  return (low['value'] - halfStep(low)) * factor <= high['value'] + halfStep(high);
}

/** What `low` must be multiplied by to have the unit of `high`; `undefined` where nothing would do. */
function comparable(low: JsonObject, high: JsonObject): number | undefined {
  if (low['system'] !== high['system']) return undefined;
  if (
    low['system'] === UCUM &&
    typeof low['code'] === 'string' &&
    typeof high['code'] === 'string'
  ) {
    return factorBetween(low['code'], high['code']);
  }
  const unit = (quantity: JsonObject): unknown => quantity['code'] ?? quantity['unit'];
  return unit(low) === unit(high) ? 1 : undefined;
}

/** Half of the last digit written: 4.0 can be anything from 3.95 to 4.05. */
function halfStep(quantity: JsonObject): number {
  const digits = decimalText(quantity, 'value')?.split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** -digits;
}
