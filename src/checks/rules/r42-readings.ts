import { ruleTitles } from '../../issues/english/rules.ts';
import type { Measurement } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { measureName } from '../facts/measured.ts';
import {
  absolute,
  add,
  compare,
  decimalText,
  divide,
  type Exact,
  exact,
  multiply,
  subtract,
  trimmed,
  whole,
} from '../figures/decimal.ts';
import type { ComputedValue, ConsistencyRule, RuleFinding } from '../rule.ts';

/** Fires when the reported value is not what its convention makes of the readings. */
export const r42Readings: ConsistencyRule = {
  id: 'R42',
  title: ruleTitles.R42,
  kind: 'consistency',
  version: '1',
  severity: 'error',
  code: 'contradiction',
  source:
    'arithmetic; the convention stated with the value counts (mouth opening: three readings, greatest; second-hand)',
  evidence: 'common-practice',
  run: (context) => context.index.all('measurement').flatMap((one) => readingFinding(context, one)),
};

function readingFinding(context: CheckContext, statement: Measurement): readonly RuleFinding[] {
  const readings = (statement.readings ?? []).map(exact).filter((one) => one !== undefined);
  const value = statement.value === undefined ? undefined : exact(statement.value);
  if (readings.length === 0 || value === undefined) return [];
  const name = measureName(context, statement.measure);
  const base = {
    on: statement.key,
    ...(statement.side !== undefined && { side: statement.side }),
    inputsUsed: [statement.key],
    values: figures(readings, statement.unit),
  };
  const { convention } = statement;
  if (convention === undefined && readings.length > 1) {
    return [
      {
        ...base,
        outcome: 'not-evaluable',
        inputsMissing: ['how the value came from the readings'],
        text: `${name}: ${readings.length} readings, and how the value came from them is not said.`,
      },
    ];
  }
  const fires = !agrees(value, readings, convention ?? 'single');
  return [
    {
      ...base,
      outcome: fires ? 'fires' : 'does-not-fire',
      inputsMissing: [],
      text: fires
        ? `${name}: the value is not the ${convention ?? 'single'} of its readings.`
        : `${name}: the value is the ${convention ?? 'single'} of its readings.`,
    },
  ];
}

function agrees(
  value: Exact,
  readings: readonly Exact[],
  convention: NonNullable<Measurement['convention']>,
): boolean {
  const sorted = [...readings].sort(compare);
  const equals = (other: Exact | undefined): boolean =>
    other !== undefined && compare(value, other) === 0;
  switch (convention) {
    case 'single':
      return readings.length === 1 && equals(readings[0]);
    case 'last':
      return equals(readings.at(-1));
    case 'minimum':
      return equals(sorted[0]);
    case 'maximum':
      return equals(sorted.at(-1));
    case 'mean':
      return roundsTo(value, sum(readings), whole(readings.length));
    case 'median':
      return roundsTo(value, middle(sorted), whole(2));
  }
}

/** Whether `total / parts`, rounded either way at a half, is the value as far as it was written out. */
function roundsTo(value: Exact, total: Exact, parts: Exact): boolean {
  const apart = absolute(subtract(multiply(value, parts), total));
  const halfStep = multiply({ digits: 5n, scale: value.scale + 1 }, parts);
  return compare(apart, halfStep) <= 0;
}

/** Twice the median. */
function middle(sorted: readonly Exact[]): Exact {
  const upper = sorted[Math.floor(sorted.length / 2)] ?? whole(0);
  const lower = sorted[Math.ceil(sorted.length / 2) - 1] ?? whole(0);
  return add(upper, lower);
}

function sum(readings: readonly Exact[]): Exact {
  return readings.reduce(add, whole(0));
}

function figures(readings: readonly Exact[], unit: string): readonly ComputedValue[] {
  const sorted = [...readings].sort(compare);
  const [least, most] = [sorted[0], sorted.at(-1)];
  const mean = divide(sum(readings), whole(readings.length), 3);
  if (least === undefined || most === undefined || mean === undefined) return [];
  return [
    { name: 'mean', value: decimalText(trimmed(mean.value)), unit },
    { name: 'maximum', value: decimalText(most), unit },
    { name: 'minimum', value: decimalText(least), unit },
  ];
}
