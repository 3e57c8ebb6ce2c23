import { ruleTitles } from '../../issues/english/rules.ts';
import type { CheckContext } from '../context.ts';
import { conditionsOf, isMeasured, keysOf, measured, missingOf } from '../facts/measured.ts';
import { isTested, movementOn } from '../facts/movements.ts';
import { absolute, compare, decimalText, subtract } from '../figures/decimal.ts';
import { otherSide } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

/** Jaw: assisted opening under unassisted, sideways travel apart, deviation away from the weak side. */
export const r25Jaw: ConsistencyRule = {
  id: 'R25',
  title: ruleTitles.R25,
  kind: 'consistency',
  version: '1',
  severity: 'check',
  code: 'check-measurement',
  source:
    'common practice, no source; the jaw deviates to the weak side (second-hand teaching pages); sideways travel: secondary page',
  evidence: 'common-practice',
  run: (context) => [...opening(context), ...sideways(context), ...deviation(context)],
};

function opening(context: CheckContext): readonly RuleFinding[] {
  const own = measured(context, 'mio');
  const assisted = measured(context, 'mio-assist');
  const used = keysOf(own, assisted);
  if (used.length === 0) return [];
  const base = { on: 'opening', inputsUsed: used, inputsMissing: missingOf(own, assisted) };
  if (!isMeasured(own) || !isMeasured(assisted)) {
    return [
      { ...base, outcome: 'not-evaluable', text: 'One of the two mouth openings is missing.' },
    ];
  }
  const overlap = [own, assisted].map(({ statement }) =>
    conditionsOf(statement)
      .filter((one) => one.startsWith('overlap'))
      .join(' '),
  );
  if (overlap[0] !== overlap[1]) {
    return [
      {
        ...base,
        outcome: 'not-evaluable',
        inputsMissing: ['both openings with, or both without, the overlap of the incisors'],
        text: 'The two mouth openings were measured differently.',
      },
    ];
  }
  const fires = compare(own.value, assisted.value) > 0;
  return [
    {
      ...base,
      outcome: fires ? 'fires' : 'does-not-fire',
      ...(fires && { severity: 'error' as const, code: 'contradiction' as const }),
      text: fires
        ? 'The mouth opens further unassisted than assisted: one of the two values is wrong.'
        : 'Assisted opening is not less than unassisted opening.',
    },
  ];
}

function sideways(context: CheckContext): readonly RuleFinding[] {
  const limit = context.limit('difference-lat-exc');
  if (limit === undefined) return [];
  const right = measured(context, 'lat-exc', 'right');
  const left = measured(context, 'lat-exc', 'left');
  const used = keysOf(right, left);
  if (used.length === 0) return [];
  const base = { on: 'sideways', inputsUsed: used, inputsMissing: missingOf(right, left) };
  if (!isMeasured(right) || !isMeasured(left)) {
    return [{ ...base, outcome: 'not-evaluable', text: 'Sideways travel of one side is missing.' }];
  }
  const difference = absolute(subtract(right.value, left.value));
  const fires = limit.meets(difference);
  return [
    {
      ...base,
      outcome: fires ? 'fires' : 'does-not-fire',
      text: `Sideways travel of the jaw differs by ${decimalText(difference)} mm${fires ? `: ${limit.text}, worth a second look` : ''}.`,
      values: [{ name: 'difference', value: decimalText(difference), unit: 'mm' }],
    },
  ];
}

/** The jaw goes towards the weak side, so weakness of the other side alone does not fit. */
function deviation(context: CheckContext): readonly RuleFinding[] {
  const path = movementOn(context, 'cn5-open', undefined);
  if (!isTested(path) || (path.grade !== 'to-right' && path.grade !== 'to-left')) return [];
  const side = path.grade === 'to-right' ? 'right' : 'left';
  const toward = movementOn(context, 'cn5-masseter', side);
  const away = movementOn(context, 'cn5-masseter', otherSide(side));
  if (!isTested(toward) || !isTested(away)) {
    return [
      {
        outcome: 'not-evaluable',
        on: 'deviation',
        inputsUsed: [path.key],
        inputsMissing: [toward, away].flatMap((one) => (isTested(one) ? [] : [one.missing])),
        text: `The jaw deviates to the ${side}, and the chewing muscles were not tested on both sides.`,
      },
    ];
  }
  const fires = toward.usual && !away.usual;
  return [
    {
      outcome: fires ? 'fires' : 'does-not-fire',
      on: 'deviation',
      ...(fires && { code: 'check-statement' as const }),
      inputsUsed: [path.key, toward.key, away.key],
      inputsMissing: [],
      text: fires
        ? `The jaw deviates to the ${side}, and only the chewing muscles of the other side are weak: check the sides.`
        : 'Deviation of the jaw and strength of the chewing muscles do not contradict each other.',
    },
  ];
}
