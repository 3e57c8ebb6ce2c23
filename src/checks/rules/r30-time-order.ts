import { ruleTitles } from '../../issues/english/rules.ts';
import type { Symptom } from '../../model/statement.ts';
import { isAfter } from '../../model/time.ts';
import type { CheckContext } from '../context.ts';
import { add, compare, type Exact, multiply, subtract, whole } from '../figures/decimal.ts';
import { daysBetween } from '../figures/time.ts';
import { baseValue } from '../figures/units.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

const SECONDS_A_DAY = whole(86_400);

/** An exam ahead of the present that the caller gave; a duration that its onset denies. */
export const r30TimeOrder: ConsistencyRule = {
  id: 'R30',
  title: ruleTitles.R30,
  kind: 'consistency',
  version: '1',
  severity: 'error',
  code: 'reversed-dates',
  source: 'common practice, no source',
  evidence: 'common-practice',
  run: (context) => [
    ...ahead(context),
    ...context.index.all('symptom').flatMap((one) => duration(context, one)),
  ],
};

function ahead({ exam, settings }: CheckContext): readonly RuleFinding[] {
  if (settings.now === undefined) return [];
  const fires = isAfter(exam.performed.start, settings.now);
  return [
    {
      outcome: fires ? 'fires' : 'does-not-fire',
      on: 'now',
      inputsUsed: [],
      inputsMissing: [],
      text: fires ? 'The exam lies in the future.' : 'The exam does not lie in the future.',
    },
  ];
}

/** Onset and duration are both given: they may differ by one unit of the duration, for rounding. */
function duration({ exam }: CheckContext, symptom: Symptom): readonly RuleFinding[] {
  const { onset, duration: told } = symptom;
  if (onset === undefined || told === undefined) return [];
  const base = { on: symptom.key, inputsUsed: [symptom.key] };
  const days = daysBetween(onset, exam.performed.start);
  const seconds = baseValue(told.value, told.unit);
  const step = baseValue('1', told.unit);
  const usable = seconds?.unit.kind === 'time' && told.comparator === undefined;
  if (days === undefined || !usable || step === undefined) {
    return [
      {
        ...base,
        outcome: 'not-evaluable',
        inputsMissing: ['an exact duration in a unit of time, and an onset that exists'],
        text: 'Onset and duration of a complaint cannot be compared.',
      },
    ];
  }
  const least = subtract(inSeconds(days.least), step.value);
  const most = add(inSeconds(days.most + 1), step.value);
  const fires = compare(seconds.value, least) < 0 || compare(seconds.value, most) > 0;
  return [
    {
      ...base,
      outcome: fires ? 'fires' : 'does-not-fire',
      ...(fires && { severity: 'check' as const, code: 'check-statement' as const }),
      inputsMissing: [],
      text: fires
        ? 'Onset and duration of a complaint do not fit together.'
        : 'Onset and duration of a complaint fit together.',
    },
  ];
}

function inSeconds(days: number): Exact {
  return multiply(whole(days), SECONDS_A_DAY);
}
