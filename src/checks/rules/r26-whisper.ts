import { ruleTitles } from '../../issues/english/rules.ts';
import type { CheckContext } from '../context.ts';
import { isMeasured, measured } from '../facts/measured.ts';
import { compare, whole } from '../figures/decimal.ts';
import { coversSide, type OneSide, oneSides, sideText } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

/** Items of six that must be repeated to pass. */
const PASS = whole(3);
const hiddenBy: readonly string[] = ['eac-wax-amount.occluding', 'tm-view.occluded-wax'];

/** Whispered voice: a low count with wax, a pass said of both ears at once, a count that denies the result. */
export const r26Whisper: ConsistencyRule = {
  id: 'R26',
  title: ruleTitles.R26,
  kind: 'consistency',
  version: '1',
  severity: 'check',
  code: 'check-statement',
  source:
    'WHO hearing screening annex after Pirozzo S et al. BMJ 2003;327:967 (fewer than 3 of 6 after the second set is a fail)',
  evidence: 'read',
  run: (context) => [...oneSides.flatMap((side) => oneEar(context, side)), ...bothAtOnce(context)],
};

function oneEar(context: CheckContext, side: OneSide): readonly RuleFinding[] {
  const { index } = context;
  if (index.about('measurement', 'whisper').length === 0) return [];
  const count = measured(context, 'whisper', side);
  if (!isMeasured(count)) {
    return [
      {
        outcome: 'not-evaluable',
        on: side,
        side,
        inputsUsed: [],
        inputsMissing: [count.missing],
        text: `Whispered voice ${sideText(side)} was not counted.`,
      },
    ];
  }
  const fail = compare(count.value, PASS) < 0;
  const wax = hiddenBy
    .flatMap((code) => index.about('finding', code))
    .filter((one) => one.presence === 'present' && coversSide(one.side, side));
  const denied = index
    .about('function-test', 'cn8-whisper')
    .filter((one) => one.side === side && one.result === (fail ? 'pass' : 'fail'));
  const base = { on: side, side, inputsMissing: [] };
  if (denied.length > 0) {
    return [
      {
        ...base,
        outcome: 'fires',
        severity: 'error',
        code: 'contradiction',
        inputsUsed: [count.statement.key, ...denied.map((one) => one.key)],
        text: `Whispered voice ${sideText(side)}: the count and the result do not fit together.`,
      },
    ];
  }
  if (fail && wax.length > 0) {
    return [
      {
        ...base,
        outcome: 'fires',
        inputsUsed: [count.statement.key, ...wax.map((one) => one.key)],
        text: `Whispered voice ${sideText(side)}: result limited by wax.`,
      },
    ];
  }
  return [
    {
      ...base,
      outcome: 'does-not-fire',
      inputsUsed: [count.statement.key],
      text: `Whispered voice ${sideText(side)}: ${fail ? 'fewer than 3 of 6, no wax stated' : '3 or more of 6'}.`,
    },
  ];
}

function bothAtOnce({ index }: CheckContext): readonly RuleFinding[] {
  return index
    .about('function-test', 'cn8-whisper')
    .filter((one) => one.result === 'pass' && (one.side === 'both' || one.side === undefined))
    .map((one) => ({
      outcome: 'fires',
      on: one.key,
      inputsUsed: [one.key],
      inputsMissing: ['a result for each ear'],
      text: 'Whispered voice: a pass counts only for an ear that was tested alone, the other masked.',
    }));
}
