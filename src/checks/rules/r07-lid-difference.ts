import { isMeasured, keysOf, measuredPairs, missingOf } from '../facts/measured.ts';
import { absolute, decimalText, signedText, subtract } from '../figures/decimal.ts';
import type { ComputationRule, RuleFinding } from '../rule.ts';

/** Left minus right of the upper margin distance; fires from the set limit on. Names no cause. */
export const r07LidDifference: ComputationRule = {
  id: 'R07',
  title: 'Side difference of the upper lids',
  kind: 'computation',
  version: '1',
  severity: 'information',
  source: 'OPRS 2024, doi 10.1097/IOP.0000000000002650: 1 mm is seen by most lay observers',
  evidence: 'read',
  run: (context) => {
    const limit = context.limit('lid-difference');
    const marked = context.limit('lid-difference-marked');
    return measuredPairs(context, 'mrd1').map(({ conditions, right, left }): RuleFinding => {
      const under = conditions.length > 0 ? ` (${conditions.join(', ')})` : '';
      const base = {
        ...(conditions.length > 0 && { on: conditions.join(' ') }),
        inputsUsed: keysOf(right, left),
        inputsMissing: missingOf(right, left),
      };
      if (!isMeasured(right) || !isMeasured(left)) {
        return {
          ...base,
          outcome: 'not-evaluable',
          text: `Side difference of the upper lids${under}: one side is missing.`,
        };
      }
      const difference = subtract(left.value, right.value);
      const size = absolute(difference);
      const fires = limit?.meets(size) === true;
      const lower = difference.digits < 0n ? 'left' : 'right';
      const words = marked?.meets(size) === true ? 'marked asymmetry' : 'asymmetry';
      return {
        ...base,
        outcome: fires ? 'fires' : 'does-not-fire',
        ...(fires && { side: lower }),
        text: fires
          ? `Margin reflex distance 1, left minus right ${signedText(difference)} mm${under}: ${words}, ${lower} lower.`
          : `Margin reflex distance 1, left minus right ${signedText(difference)} mm${under}: below the limit set for asymmetry.`,
        values: [{ name: 'left minus right', value: decimalText(difference), unit: 'mm' }],
      };
    });
  },
};
