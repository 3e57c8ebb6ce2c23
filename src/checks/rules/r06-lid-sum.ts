import { ruleTitles } from '../../issues/english/rules.ts';
import { isMeasured, keysOf, measured, missingOf } from '../facts/measured.ts';
import { absolute, add, decimalText, subtract } from '../figures/decimal.ts';
import { oneSides, sideText } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

const measures = ['mrd1', 'mrd2', 'pfh'];

/** Fires when the height of the fissure is not the sum of the two margin distances. */
export const r06LidSum: ConsistencyRule = {
  id: 'R06',
  title: ruleTitles.R06,
  kind: 'consistency',
  version: '1',
  severity: 'check',
  code: 'check-measurement',
  source:
    'geometry: the light reflex divides the fissure; the tolerance is common practice, no source',
  evidence: 'common-practice',
  run: (context) => {
    const tolerance = context.limit('lid-sum');
    if (tolerance === undefined) return [];
    return oneSides.flatMap((side): RuleFinding[] => {
      const [mrd1, mrd2, fissure] = measures.map((code) => measured(context, code, side));
      if (mrd1 === undefined || mrd2 === undefined || fissure === undefined) return [];
      const used = keysOf(mrd1, mrd2, fissure);
      if (used.length === 0) return [];
      const base = { on: side, side, inputsUsed: used };
      if (!isMeasured(mrd1) || !isMeasured(mrd2) || !isMeasured(fissure)) {
        return [
          {
            ...base,
            outcome: 'not-evaluable',
            inputsMissing: missingOf(mrd1, mrd2, fissure),
            text: `Lid measurements ${sideText(side)} cannot be checked against each other.`,
          },
        ];
      }
      const sum = add(mrd1.value, mrd2.value);
      const difference = absolute(subtract(fissure.value, sum));
      const fires = tolerance.meets(difference);
      return [
        {
          ...base,
          outcome: fires ? 'fires' : 'does-not-fire',
          inputsMissing: [],
          text: `Fissure height ${sideText(side)} differs by ${decimalText(difference)} mm from the sum of the margin distances${fires ? `: check the lid measurements (${tolerance.text})` : ''}.`,
          values: [{ name: 'difference', value: decimalText(difference), unit: 'mm' }],
        },
      ];
    });
  },
};
