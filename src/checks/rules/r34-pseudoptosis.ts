import { ruleTitles } from '../../issues/english/rules.ts';
import { inputsOf, some } from '../facts/fact.ts';
import { isMeasured, keysOf, measured, missingOf } from '../facts/measured.ts';
import { eyeClosure, weakerThan } from '../facts/movements.ts';
import { compare, type Exact, subtract } from '../figures/decimal.ts';
import { oneSides, otherSide } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

/** Fires when the wide eye is on a side whose closing muscle is weak: the other lid only looks low. */
export const r34Pseudoptosis: ConsistencyRule = {
  id: 'R34',
  title: ruleTitles.R34,
  kind: 'consistency',
  version: '1',
  severity: 'check',
  code: 'check-measurement',
  source: 'Medscape answers 1198462, read second-hand',
  evidence: 'second-hand',
  run: (context) => {
    const limit = context.limit('lid-difference');
    const upper = oneSides.map((side) => measured(context, 'mrd1', side));
    const lower = oneSides.map((side) => measured(context, 'mrd2', side));
    const [upperRight, upperLeft] = upper;
    if (upperRight === undefined || upperLeft === undefined || limit === undefined) return [];
    if (!isMeasured(upperRight) || !isMeasured(upperLeft)) return [];
    const [lowerRight, lowerLeft] = lower;
    if (lowerRight === undefined || lowerLeft === undefined) return [];
    const low = lowSide(upperRight.value, upperLeft.value, limit.meets);
    // Neither lid looks low: there is nothing to be mistaken for ptosis.
    if (low === undefined) return [];
    const wide = otherSide(low);
    const used = keysOf(upperRight, upperLeft, lowerRight, lowerLeft);
    if (!isMeasured(lowerRight) || !isMeasured(lowerLeft)) {
      return [
        {
          outcome: 'not-evaluable',
          side: low,
          inputsUsed: used,
          inputsMissing: missingOf(lowerRight, lowerLeft),
          text: `The ${low} upper lid is lower; the lower lids were not measured on both sides.`,
        },
      ];
    }
    const lowerDifference = compare(lowerRight.value, lowerLeft.value);
    const widerBelow = wide === 'right' ? lowerDifference > 0 : lowerDifference < 0;
    if (!widerBelow) return [finding('does-not-fire', low, used, [])];
    const weak = some(eyeClosure.map((test) => weakerThan(context, test, wide, 0)));
    const { outcome, inputsUsed, inputsMissing } = inputsOf(weak);
    return [finding(outcome, low, [...used, ...inputsUsed], inputsMissing)];
  },
};

function lowSide(
  right: Exact,
  left: Exact,
  meets: (size: Exact) => boolean,
): 'right' | 'left' | undefined {
  if (meets(subtract(left, right))) return 'right';
  return meets(subtract(right, left)) ? 'left' : undefined;
}

function finding(
  outcome: RuleFinding['outcome'],
  low: 'right' | 'left',
  inputsUsed: readonly string[],
  inputsMissing: readonly string[],
): RuleFinding {
  const wide = otherSide(low);
  const texts = {
    fires: `The ${wide} eye is wider above and below and its closing muscle is weak: this may look like ptosis on the ${low}. Horner signs tend to reduce both margin distances on their side.`,
    'not-evaluable': `Whether the ${low} lid only looks low cannot be told.`,
    'does-not-fire': `No sign that the ${low} lid only looks low.`,
    'not-applicable': '',
  };
  return { outcome, side: low, inputsUsed, inputsMissing, text: texts[outcome] };
}
