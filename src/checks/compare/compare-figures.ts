import type { Exam } from '../../model/exam.ts';
import type { Measurement } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import {
  absolute,
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
import { baseValue } from '../figures/units.ts';
import type { Limit } from '../settings/thresholds.ts';
import type { Comparison, FigureChange } from './comparison.ts';

/** One measurement in its exam. */
export interface Taken {
  readonly exam: Exam;
  readonly statement: Measurement;
}

/**
 * Change of a measured figure. A claim needs the same method, instrument and convention on both
 * sides, figures and not bounds or estimates, and a value that was measured anew.
 */
export function compareFigures(
  now: Taken,
  before: Taken,
  catalogue: Catalogue,
  skinChange: Limit | undefined,
): Pick<Comparison, 'change' | 'reason' | 'figures'> {
  const reason = obstacle(now, before);
  if (reason !== undefined) return { change: 'not-comparable', reason };
  const figures = figureChange(now.statement, before.statement);
  if (figures === undefined)
    return { change: 'not-comparable', reason: 'the units differ in kind' };
  const difference = absolute(figures.inBase);
  const resolution = coarsest(now, before);
  const onSkin = catalogue.measures.get(now.statement.measure)?.region === 'skin';
  const within =
    (resolution !== undefined && compare(difference, resolution.value) < 0) ||
    (onSkin && skinChange?.meets(difference) === true);
  const { inBase: _inBase, ...told } = figures;
  const unchanged = within || difference.digits === 0n;
  return {
    change: unchanged ? 'unchanged' : 'changed',
    figures: {
      ...told,
      ...(resolution && {
        resolution: { value: decimalText(resolution.value), unit: resolution.unit },
      }),
      ...(within && difference.digits !== 0n && { withinResolution: true }),
    },
  };
}

/** The first thing that stands in the way of a claim, in words. */
function obstacle(now: Taken, before: Taken): string | undefined {
  return valueObstacle(now.statement, before.statement) ?? methodObstacle(now, before);
}

function valueObstacle(now: Measurement, before: Measurement): string | undefined {
  if (now.value === undefined || before.value === undefined) return 'a reading could not be used';
  if (now.carried !== undefined) return 'the value was carried over and not measured again';
  if (now.comparator !== undefined || before.comparator !== undefined) {
    return 'only a bound was given';
  }
  const estimates = [now, before].filter((one) => one.estimated === true).length;
  if (estimates === 1) return 'methods differ: one value is an estimate';
  if (estimates === 2) return 'both values are estimates';
  return undefined;
}

function methodObstacle(now: Taken, before: Taken): string | undefined {
  const a = now.statement;
  const b = before.statement;
  if ((a.convention ?? 'single') !== (b.convention ?? 'single')) {
    return 'methods differ: the value was made from the readings in another way';
  }
  const methods = agreement(a.methods, b.methods);
  const instruments = agreement(instrumentTypes(now), instrumentTypes(before));
  if (methods === 'differ') return 'methods differ';
  if (instruments === 'differ') return 'instruments differ';
  if (methods === 'one-unstated') return 'the method is stated in one exam only';
  if (instruments === 'one-unstated') return 'the instrument is stated in one exam only';
  return methods === 'unstated' && instruments === 'unstated'
    ? 'neither exam says how it was measured'
    : undefined;
}

function agreement(
  a: readonly string[] | undefined,
  b: readonly string[] | undefined,
): 'agree' | 'differ' | 'one-unstated' | 'unstated' {
  if (a === undefined && b === undefined) return 'unstated';
  if (a === undefined || b === undefined) return 'one-unstated';
  return [...a].sort().join(' ') === [...b].sort().join(' ') ? 'agree' : 'differ';
}

function instrumentTypes({ exam, statement }: Taken): readonly string[] | undefined {
  const types = instrumentsOf({ exam, statement }).map((instrument) => instrument.type);
  return types.length > 0 ? types : undefined;
}

function instrumentsOf({ exam, statement }: Taken): NonNullable<Exam['instruments']> {
  const keys = statement.instruments ?? [];
  return (exam.instruments ?? []).filter((instrument) => keys.includes(instrument.key));
}

/** The coarser of the smallest steps of the instruments, in base units. */
function coarsest(
  now: Taken,
  before: Taken,
): { readonly value: Exact; readonly unit: string } | undefined {
  let coarse: { readonly value: Exact; readonly unit: string } | undefined;
  for (const { resolution } of [...instrumentsOf(now), ...instrumentsOf(before)]) {
    if (resolution === undefined) continue;
    const step = baseValue(resolution.value, resolution.unit);
    const of = baseValue('0', now.statement.unit);
    if (step === undefined || step.unit.base !== of?.unit.base) continue;
    if (coarse === undefined || compare(step.value, coarse.value) > 0) {
      coarse = { value: step.value, unit: step.unit.base };
    }
  }
  return coarse;
}

function figureChange(
  now: Measurement,
  before: Measurement,
): (FigureChange & { readonly inBase: Exact }) | undefined {
  const { value: nowText = '', unit: nowUnit } = now;
  const { value: beforeText = '', unit: beforeUnit } = before;
  const a = baseValue(nowText, nowUnit);
  const b = baseValue(beforeText, beforeUnit);
  if (a === undefined || b === undefined || a.unit.base !== b.unit.base) return undefined;
  const inBase = subtract(a.value, b.value);
  const sameUnit = nowUnit === beforeUnit;
  const own = sameUnit ? difference(nowText, beforeText) : undefined;
  const percent = percentOf(inBase, b.value);
  return {
    before: { value: beforeText, unit: beforeUnit },
    now: { value: nowText, unit: nowUnit },
    delta: decimalText(own ?? inBase),
    unit: own === undefined ? a.unit.base : nowUnit,
    ...(percent !== undefined && { percent }),
    inBase,
  };
}

function difference(now: string, before: string): Exact | undefined {
  const a = exact(now);
  const b = exact(before);
  return a && b && subtract(a, b);
}

function percentOf(delta: Exact, before: Exact): string | undefined {
  if (before.digits <= 0n) return undefined;
  const quotient = divide(multiply(delta, whole(100)), before, 2);
  if (quotient === undefined) return undefined;
  return decimalText(trimmed(quotient.value));
}
