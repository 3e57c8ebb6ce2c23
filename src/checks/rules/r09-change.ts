import { measuredIn } from '../../kinds/measurement/check.ts';
import type { Comparison } from '../compare/comparison.ts';
import { figuresText } from '../compare/figures-text.ts';
import type { CheckContext } from '../context.ts';
import { measureName } from '../facts/measured.ts';
import { sideText } from '../places/sides.ts';
import type { ComputationRule, RuleFinding, RuleOutcome } from '../rule.ts';

const outcomes: { readonly [Change in Comparison['change']]?: RuleOutcome } = {
  changed: 'fires',
  unchanged: 'does-not-fire',
  'not-comparable': 'not-evaluable',
};

/** Change of each measure since the prior exam; no claim where method, instrument or conditions differ. */
export const r09Change: ComputationRule = {
  id: 'R09',
  title: 'Change of a measure since the prior exam',
  kind: 'computation',
  version: '1',
  severity: 'information',
  source: 'common practice, no source',
  evidence: 'common-practice',
  run: (context) => measuredIn(context.comparisons).map((one) => changeFinding(context, one)),
};

function changeFinding(context: CheckContext, comparison: Comparison): RuleFinding {
  const { change, figures, reason, identity, now, side } = comparison;
  const name = `${measureName(context, comparison.code)} ${sideText(side)}`.trim();
  const base = {
    on: identity,
    ...(side !== undefined && { side }),
    outcome: outcomes[change] ?? 'not-evaluable',
    inputsUsed: now === undefined ? [] : [now],
  };
  if (figures === undefined) {
    const why = reason ?? 'no comparison';
    return { ...base, inputsMissing: [why], text: `${name}: no change is claimed, ${why}.` };
  }
  return {
    ...base,
    inputsMissing: [],
    text: `${name}: ${figuresText(comparison)}.`,
    values: [
      { name: 'delta', value: figures.delta, unit: figures.unit },
      ...(figures.percent === undefined
        ? []
        : [{ name: 'percent', value: figures.percent, unit: '%' }]),
      ...(comparison.days === undefined
        ? []
        : [{ name: 'days', value: String(comparison.days), unit: 'd' }]),
    ],
  };
}
