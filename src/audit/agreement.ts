/** Answers of two examiners to one yes-or-no question: both yes, only the first, only the second, both no. */
export interface PairedAnswers {
  readonly both: number;
  readonly first: number;
  readonly second: number;
  readonly neither: number;
}

/**
 * Measures agreement beyond chance.
 *
 * @param answers How often both said yes, only the first, only the second, and neither.
 * @returns A figure from -1 to 1; undefined where nothing or only one answer was ever given.
 * @example
 * const agreement = kappa({ both: 20, first: 5, second: 10, neither: 15 }); // 0.4
 * @see Cohen J, 1960, A coefficient of agreement for nominal scales, Educ Psychol Meas 20:37-46
 */
export function kappa({ both, first, second, neither }: PairedAnswers): number | undefined {
  const total = both + first + second + neither;
  if (total === 0) return undefined;
  const observed = (both + neither) / total;
  const yes = ((both + first) / total) * ((both + second) / total);
  const no = ((second + neither) / total) * ((first + neither) / total);
  const chance = yes + no;
  return chance === 1 ? undefined : (observed - chance) / (1 - chance);
}

/** Differences of two examiners, without the figures themselves. */
export interface Differences {
  readonly count: number;
  readonly mean: number;
  /** Sum of squared deviations from the mean. */
  readonly squares: number;
}

export interface Limits {
  readonly count: number;
  readonly mean: number;
  readonly deviation: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * Works out the mean difference, and the limits between which some 95 % of differences lie.
 *
 * @param differences Their count, mean, and sum of squares about the mean.
 * @returns The limits; undefined for fewer than two pairs.
 * @example
 * const limits = limitsOfAgreement({ count: 2, mean: 1, squares: 2 });
 * @see Bland JM, Altman DG, 1986, Lancet 327:307-310
 */
export function limitsOfAgreement({ count, mean, squares }: Differences): Limits | undefined {
  if (count < 2) return undefined;
  const deviation = Math.sqrt(squares / (count - 1));
  return {
    count,
    mean,
    deviation,
    lower: mean - 1.96 * deviation,
    upper: mean + 1.96 * deviation,
  };
}
