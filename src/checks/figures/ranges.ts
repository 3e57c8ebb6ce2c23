import type { Measurement } from '../../model/statement.ts';
import type { ReferenceRange } from '../../terminology/types.ts';
import type { CheckContext } from '../context.ts';
import { figureOf, isMeasured } from '../facts/measured.ts';
import { compare, type Exact } from './decimal.ts';
import { baseValue } from './units.ts';

/** A value against the reference ranges that apply to it. */
export interface RangeVerdict {
  readonly statement: Measurement;
  readonly verdict: 'inside' | 'outside' | 'no-figure' | 'no-population';
  /** The ranges that were applied; for `no-population` those that could be chosen. */
  readonly ranges: readonly ReferenceRange[];
}

/** Population of a range that holds for everyone. */
const ANYONE = 'Any';

/**
 * Measurements that have a reference range, held to it. A range belongs to a population, so it
 * applies only where the caller chose that population; with several, a value counts as outside when
 * it is outside all of them.
 */
export function rangeVerdicts(context: CheckContext): readonly RangeVerdict[] {
  return context.index.all('measurement').flatMap((statement): readonly RangeVerdict[] => {
    const all = rangesOf(context, statement.measure);
    if (all.length === 0) return [];
    const ranges = all.filter(
      ({ population }) =>
        population === ANYONE || context.settings.populations?.includes(population) === true,
    );
    if (ranges.length === 0) return [{ statement, verdict: 'no-population', ranges: all }];
    const figure = figureOf(context, statement);
    if (!isMeasured(figure) || figure.bound !== undefined) {
      return [{ statement, verdict: 'no-figure', ranges }];
    }
    const unit = context.catalogue.measures.get(statement.measure)?.unit ?? figure.unit;
    const outside = ranges.every((range) => isOutside(figure.value, range, unit));
    return [{ statement, verdict: outside ? 'outside' : 'inside', ranges }];
  });
}

/** Whether a range is bound to adults or another group, and so not for a child. */
export function isForAnyone(range: ReferenceRange): boolean {
  return range.population === ANYONE;
}

/** Ranges of the measure and of cohorts of it, without those known only from memory unless asked for. */
function rangesOf(context: CheckContext, measure: string): readonly ReferenceRange[] {
  const { measures } = context.catalogue;
  const own = measures.get(measure)?.ranges ?? [];
  const cohorts = [...measures.values()]
    .filter((row) => row.rangeOf === measure)
    .flatMap((row) => row.ranges ?? [])
    // A row with an upper limit alone is a cut-off of a disease and no range.
    .filter((range) => range.low !== undefined);
  return [...own, ...cohorts].filter(
    (range) =>
      (range.low !== undefined || range.high !== undefined) &&
      (context.settings.memoryValues || range.evidence !== 'memory'),
  );
}

function isOutside(value: Exact, range: ReferenceRange, unit: string): boolean {
  const low = range.low === undefined ? undefined : baseValue(range.low, unit)?.value;
  const high = range.high === undefined ? undefined : baseValue(range.high, unit)?.value;
  if (low !== undefined && compare(value, low) < 0) return true;
  return high !== undefined && compare(value, high) > 0;
}
