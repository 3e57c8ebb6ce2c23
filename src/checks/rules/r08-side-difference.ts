import type { Lean, Measure } from '../../terminology/types.ts';
import type { CheckContext } from '../context.ts';
import {
  isMeasured,
  keysOf,
  measured,
  measuredPairs,
  missingOf,
  type Pair,
} from '../facts/measured.ts';
import {
  absolute,
  compare,
  decimalText,
  type Exact,
  signedText,
  subtract,
} from '../figures/decimal.ts';
import { baseValue } from '../figures/units.ts';
import type { ComputationRule, RuleFinding } from '../rule.ts';
import { type ThresholdId, thresholds } from '../settings/thresholds.ts';
import { lowered } from '../words/english.ts';

/** R07 has the lids, R43 the pupils; the jaw deviates to one side, which has no partner. */
const elsewhere: ReadonlySet<string> = new Set(['mrd1', 'pupil-diam', 'jaw-deviation']);
const wholeMeasures = ['eye-closure-asym', 'static-lid-asym', 'facial-cant'] as const;

/** Right minus left of every paired measure; fires where a limit is set for that measure. */
export const r08SideDifference: ComputationRule = {
  id: 'R08',
  title: 'Side difference of paired measures',
  kind: 'computation',
  version: '1',
  severity: 'information',
  source: 'limits as listed in the thresholds: Chu 2011, Hohman 2014, OPRS 2024 and others',
  evidence: 'read',
  run: (context) => {
    const paired = [...context.catalogue.measures.values()].filter(
      (row) => row.laterality !== 'midline' && row.type !== 'coded' && !elsewhere.has(row.code),
    );
    return [
      ...paired.flatMap((row) =>
        measuredPairs(context, row.code)
          // A lump on one side has no partner on the other.
          .filter((pair) => row.laterality === 'paired' || bothSides(pair))
          .map((pair) => pairFinding(context, row, pair)),
      ),
      ...wholeMeasures.flatMap((id) => wholeFinding(context, id)),
    ];
  },
};

function bothSides({ right, left }: Pair): boolean {
  return isMeasured(right) && isMeasured(left);
}

function pairFinding(
  context: CheckContext,
  row: Lean<Measure>,
  { conditions, right, left }: Pair,
): RuleFinding {
  const under = conditions.length > 0 ? ` (${conditions.join(', ')})` : '';
  const base = {
    on: [row.code, ...conditions].join(' '),
    inputsUsed: keysOf(right, left),
    inputsMissing: missingOf(right, left),
  };
  if (!isMeasured(right) || !isMeasured(left)) {
    return {
      ...base,
      outcome: 'not-evaluable',
      text: `${row.display}${under}: one side is missing.`,
    };
  }
  const difference = subtract(right.value, left.value);
  const fires = flag(context, row, absolute(difference));
  const smaller = difference.digits < 0n ? 'right' : 'left';
  return {
    ...base,
    outcome: fires ? 'fires' : 'does-not-fire',
    ...(fires && { side: smaller }),
    text: `${row.display}${under}, right minus left ${signedText(difference)} ${right.unit}${fires ? `: asymmetry, ${smaller} smaller` : ''}.`,
    values: [{ name: 'right minus left', value: decimalText(difference), unit: right.unit }],
  };
}

function flag({ limit, settings }: CheckContext, row: Lean<Measure>, size: Exact): boolean {
  const set = Object.hasOwn(settings.sideDifferences, row.code)
    ? settings.sideDifferences[row.code]
    : undefined;
  if (set !== undefined) {
    const at = baseValue(set, row.unit)?.value;
    return at !== undefined && compare(size, at) >= 0;
  }
  const id = `difference-${row.code}`;
  return isThreshold(id) && limit(id)?.meets(size) === true;
}

function isThreshold(id: string): id is ThresholdId {
  return Object.hasOwn(thresholds, id);
}

/** Measures that are a difference of the sides themselves. */
function wholeFinding(
  context: CheckContext,
  id: (typeof wholeMeasures)[number],
): readonly RuleFinding[] {
  const limit = context.limit(id);
  if (context.index.about('measurement', id).length === 0 || limit === undefined) return [];
  const figure = measured(context, id);
  const name = lowered(context.catalogue.measures.get(id)?.display ?? id);
  if (!isMeasured(figure)) {
    return [
      {
        outcome: 'not-evaluable',
        on: id,
        inputsUsed: [],
        inputsMissing: [figure.missing],
        text: `No figure for ${name}.`,
      },
    ];
  }
  const fires = limit.meets(absolute(figure.value));
  return [
    {
      outcome: fires ? 'fires' : 'does-not-fire',
      on: id,
      inputsUsed: [figure.statement.key],
      inputsMissing: [],
      text: `${limit.title}: ${decimalText(figure.value)} ${figure.unit}${fires ? `, ${limit.text}` : ''}.`,
      values: [{ name: 'difference', value: decimalText(figure.value), unit: figure.unit }],
    },
  ];
}
