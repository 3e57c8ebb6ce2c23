import type { Key } from '../../model/primitive.ts';
import type { Measurement } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { decimalText, type Exact } from '../figures/decimal.ts';
import { baseValue } from '../figures/units.ts';
import type { OneSide } from '../places/sides.ts';
import { fill } from '../words/check-words.ts';

/** A measured figure in the base unit of its kind. */
export interface Measured {
  readonly value: Exact;
  readonly unit: string;
  readonly statement: Measurement;
  /** Set where only a bound is known: the figure lies that way of `value`. */
  readonly bound?: '<' | '<=' | '>=' | '>';
}

/** Why there is no figure, in words. */
export interface Unmeasured {
  readonly missing: string;
}

export function isMeasured(figure: Measured | Unmeasured): figure is Measured {
  return 'value' in figure;
}

/** The figure of one measurement in its base unit. */
export function figureOf(context: CheckContext, statement: Measurement): Measured | Unmeasured {
  const name = measureName(context, statement.measure);
  const { phrases } = context.words;
  if (statement.value === undefined) return { missing: fill(phrases.unusable, { name }) };
  const converted = baseValue(statement.value, statement.unit);
  if (converted === undefined) return { missing: fill(phrases['unit-unknown'], { name }) };
  const { comparator } = statement;
  return {
    value: converted.value,
    unit: converted.unit.base,
    statement,
    ...(comparator !== undefined && { bound: comparator }),
  };
}

/** As {@link figureOf}, and a bound is not enough: for sums and differences. */
export function wholeFigureOf(
  context: CheckContext,
  statement: Measurement,
): Measured | Unmeasured {
  const figure = figureOf(context, statement);
  if (isMeasured(figure) && figure.bound !== undefined) {
    const name = measureName(context, statement.measure);
    return { missing: fill(context.words.phrases['only-bound'], { name }) };
  }
  return figure;
}

/**
 * The one figure of a measure on a side. More than one that differ give no figure: the exam does not
 * say which is meant.
 */
export function measured(
  context: CheckContext,
  measure: string,
  side?: OneSide,
  wanted: (statement: Measurement) => boolean = () => true,
): Measured | Unmeasured {
  const { phrases, sides } = context.words;
  const name = fill(phrases.named, {
    name: measureName(context, measure),
    side: side === undefined ? '' : sides[side],
  });
  const statements = context.index
    .about('measurement', measure)
    .filter((statement) => measuredOn(statement, side) && wanted(statement));
  const first = statements[0];
  if (first === undefined) return { missing: name };
  if (statements.some((other) => other.value !== first.value || other.unit !== first.unit)) {
    return { missing: fill(phrases['several-values'], { name }) };
  }
  return wholeFigureOf(context, first);
}

/** A pair of figures taken under the same conditions. */
export interface Pair {
  readonly conditions: readonly string[];
  readonly right: Measured | Unmeasured;
  readonly left: Measured | Unmeasured;
}

/** The two sides of a measure, for each set of conditions that it was taken under. */
export function measuredPairs(context: CheckContext, measure: string): readonly Pair[] {
  const sets = new Map<string, readonly string[]>();
  for (const statement of context.index.about('measurement', measure)) {
    if (statement.side === undefined || statement.side === 'midline') continue;
    const conditions = conditionsOf(statement);
    sets.set(conditions.join(' '), conditions);
  }
  return [...sets].map(([signature, conditions]) => {
    const wanted = (statement: Measurement): boolean =>
      conditionsOf(statement).join(' ') === signature;
    return {
      conditions,
      right: measured(context, measure, 'right', wanted),
      left: measured(context, measure, 'left', wanted),
    };
  });
}

export function conditionsOf(statement: Measurement): readonly string[] {
  return [...(statement.conditions ?? [])].sort();
}

/** A figure for texts: `4.5 mm`. */
export function figureText(figure: Measured): string {
  return `${figure.bound === undefined ? '' : `${figure.bound} `}${decimalText(figure.value)} ${figure.unit}`;
}

export function measureName(context: CheckContext, measure: string): string {
  return context.catalogue.measures.get(measure)?.display ?? measure;
}

export function keysOf(...figures: readonly (Measured | Unmeasured)[]): readonly Key[] {
  return figures.filter(isMeasured).map((figure) => figure.statement.key);
}

export function missingOf(...figures: readonly (Measured | Unmeasured)[]): readonly string[] {
  return figures.flatMap((figure) => (isMeasured(figure) ? [] : [figure.missing]));
}

function measuredOn(statement: Measurement, side: OneSide | undefined): boolean {
  if (side === undefined) return true;
  return (
    statement.side === side || statement.side === 'both' || statement.side === `${side}-of-midline`
  );
}
