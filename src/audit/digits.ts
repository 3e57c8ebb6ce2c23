/** How often each last digit was written, 0 to 9, of the figures of one measure. */
export interface DigitPreference {
  readonly count: number;
  readonly digits: readonly number[];
  /** Share of figures that end in 0 or 5; without preference some 0.2. */
  readonly zeroOrFive: number;
  /** Chi-square against equal use of the ten digits, with nine degrees of freedom; above 16.92 at 5 %. */
  readonly chiSquare: number;
}

/** Digit preference from the counts of the last digits. @see Pearson K, 1900, Philos Mag 50:157-175 */
export function digitPreference(digits: readonly number[]): DigitPreference {
  const count = digits.reduce((sum, one) => sum + one, 0);
  const expected = count / 10;
  const chiSquare =
    count === 0 ? 0 : digits.reduce((sum, one) => sum + (one - expected) ** 2 / expected, 0);
  const zeroOrFive = count === 0 ? 0 : ((digits[0] ?? 0) + (digits[5] ?? 0)) / count;
  return { count, digits, zeroOrFive, chiSquare };
}

/** The last digit as written: `4.0` ends in 0. */
export function lastDigit(value: string): number {
  return Number(value.at(-1));
}
