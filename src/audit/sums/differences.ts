import {
  add,
  decimalText,
  type Exact,
  exact,
  multiply,
  subtract,
  trimmed,
  whole,
} from '../../checks/figures/decimal.ts';
import { type Limits, limitsOfAgreement } from '../agreement.ts';

/** Differences of two examiners, added up without rounding. */
export interface DifferenceSums {
  readonly count: number;
  /** Decimal as text. */
  readonly sum: string;
  /** Sum of the squares, likewise. */
  readonly squares: string;
}

export const noDifferences: DifferenceSums = { count: 0, sum: '0', squares: '0' };

const nothing = whole(0);
const held = (text: string): Exact => exact(text) ?? nothing;
const written = (value: Exact): string => decimalText(trimmed(value));

/** With the difference of two figures as they were written; unchanged where one is no decimal. */
export function withDifference(
  sums: DifferenceSums,
  first: string,
  second: string,
): DifferenceSums {
  const [one, other] = [exact(first), exact(second)];
  if (one === undefined || other === undefined) return sums;
  const difference = subtract(one, other);
  return addDifferences(sums, {
    count: 1,
    sum: written(difference),
    squares: written(multiply(difference, difference)),
  });
}

export function addDifferences(one: DifferenceSums, other: DifferenceSums): DifferenceSums {
  return {
    count: one.count + other.count,
    sum: written(add(held(one.sum), held(other.sum))),
    squares: written(add(held(one.squares), held(other.squares))),
  };
}

/** The limits of agreement; undefined for fewer than two pairs. */
export function limitsOfSums({ count, sum, squares }: DifferenceSums): Limits | undefined {
  if (count === 0) return undefined;
  const total = held(sum);
  // Exact up to the division: what is left of large squares would otherwise be rounding.
  const spread = subtract(multiply(whole(count), held(squares)), multiply(total, total));
  const about = { mean: numberOf(total) / count, squares: numberOf(spread) / count };
  return limitsOfAgreement({ count, ...about });
}

const numberOf = (value: Exact): number => Number(decimalText(value));
