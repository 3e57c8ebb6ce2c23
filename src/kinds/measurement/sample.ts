import type { Key, Side } from '../../model/primitive.ts';
import type { Statement } from '../../model/statement.ts';
import { builtInCatalogue } from '../../terminology/catalogue.ts';
import { canonicalFigure, isWithinSpan, limitsOf } from '../../terminology/limits.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { Lean, Measure, Region } from '../../terminology/types.ts';
import { itemCodes } from '../../testing/formats/item.ts';
import type { Arriving } from '../../testing/formats/losses/loss-work.ts';
import {
  amounts,
  maybe,
  type Sampling,
  type Stated,
  sampleDecimal,
  sampleDetails,
  sampleReason,
  sampleText,
  sitedRegions,
} from '../../testing/sample/sampling.ts';
import { aboutFinding, answer, type KindSample, methodsOf } from '../facets/sample.ts';
import { presentIn } from '../finding/sample.ts';
import type { Measurement } from './statement.ts';

export const measurementSample: KindSample<Measurement> = {
  drawn: {
    examined: (sampling) => {
      const { random, catalogue, size } = sampling;
      const regions = sitedRegions(sampling);
      const measures = random.some(
        [...catalogue.measures.values()].filter(isMeasured),
        amounts[size].measures,
      );
      return () =>
        measures.flatMap((measure) => {
          const own = catalogue.regions.get(measure.region);
          const region =
            measure.region === 'skin' || own === undefined ? random.pick(regions) : own;
          return measurementStatements(sampling, measure, region);
        });
    },
    referring: lesionSize,
  },
  items: (measurement, groups) => {
    const { region, side, methods, measure, value, comparator, unit } = measurement;
    const { unusable, conditions, at, note, about } = measurement;
    return [
      {
        region,
        side,
        methods,
        code: itemCodes.measurement(measure),
        value: value === undefined ? answer('', unusable) : { number: value, comparator, unit },
        conditions,
        at,
        note,
        group: groups.get(about ?? ''),
      },
    ];
  },
  arrives: (measurement, exam, work) =>
    measured(methodsOf(aboutFinding(measurement, exam, work), work), work),
};

function measured(statement: Measurement, work: Arriving): Measurement {
  const { conditions, unusable } = statement;
  const kept =
    conditions === undefined ? statement : { ...statement, conditions: work.oneOf(conditions) };
  if (unusable === undefined) return kept;
  const unit = builtInCatalogue.measures.get(statement.measure)?.unit ?? statement.unit;
  if (unit !== statement.unit) work.lost('unusable-unit');
  return { ...kept, unit, unusable: work.without('reason', unusable) };
}

/** The size of the first lesion that is there. */
function lesionSize(sampling: Sampling, statements: readonly Statement[]): Stated[] {
  const [lesion] = presentIn(statements);
  if (lesion === undefined) return [];
  const measure = sampling.catalogue.measures.get('lesion-max');
  const region = sampling.catalogue.regions.get(lesion.region);
  if (measure === undefined || region === undefined) return [];
  return measurementStatements(sampling, measure, region, lesion.key).slice(0, 1);
}

/** True for a row that is stated as a measurement and not as a score or a test. */
function isMeasured(row: Lean<Measure>): boolean {
  const elsewhere = row.rangeOf ?? row.scale ?? row.test;
  return elsewhere === undefined && (row.type === 'quantity' || row.type === 'count');
}

/** A measure on each side that a region has; `about` is the key of the finding that was measured. */
function measurementStatements(
  sampling: Sampling,
  measure: Lean<Measure>,
  region: Lean<Region>,
  about?: Key,
): Stated[] {
  const { random } = sampling;
  const laterality = measure.region === region.code ? measure.laterality : region.laterality;
  const { sides, required } = lateralitySides[laterality];
  const wanted: readonly (Side | undefined)[] = required
    ? sides.includes('midline')
      ? [random.pick(sides)]
      : ['right', 'left']
    : [random.chance(0.9) ? undefined : random.pick(sides)];
  return wanted.map((side) => measurement(sampling, measure, { region: region.code, side, about }));
}

function measurement(
  sampling: Sampling,
  measure: Lean<Measure>,
  {
    region,
    side,
    about,
  }: Record<'region', string> & { side: Side | undefined; about: Key | undefined },
): Stated {
  const { random, catalogue } = sampling;
  const unit = random.pick([measure.unit, measure.unit, ...(measure.units ?? [])]);
  const draw = (): string => reading(sampling, measure, unit);
  const readings = Array.from({ length: maybe(sampling, 0.2) ? random.int(1, 3) : 0 }, draw);
  const unusable = maybe(sampling, 0.05) && random.chance(0.5);
  const conditions = random.some([...catalogue.measureConditions.keys()], random.int(1, 2));
  const stated: Omit<Measurement, 'key'> = {
    kind: 'measurement',
    measure: measure.code,
    region,
    ...(side !== undefined && { side }),
    ...(about !== undefined && { about }),
    unit,
    ...(unusable
      ? { unusable: sampleReason(sampling, 'not-examined') }
      : {
          value: readings.at(-1) ?? draw(),
          ...(maybe(sampling, 0.05) && {
            comparator: random.pick(['<', '<=', '>=', '>'] as const),
          }),
        }),
    ...(readings.length > 0 && { readings }),
    ...(readings.length > 0 &&
      (readings.length > 1 || random.chance(0.5)) && {
        convention: readings.length > 1 ? ('last' as const) : ('single' as const),
      }),
    ...(maybe(sampling, 0.2) && { conditions }),
    ...(maybe(sampling, 0.05) && { methods: ['measurement'] as const }),
    ...(maybe(sampling, 0.05) && { estimated: random.chance(0.7) }),
    ...(maybe(sampling, 0.03) && { place: sampleText(sampling) }),
    ...sampleDetails(sampling),
  };
  return stated;
}

/** Bounds by unit, wide enough for any measure of the tables: test data, not reference ranges. */
const bounds: ReadonlyMap<string, readonly [low: number, high: number, digits: number]> = new Map([
  ['mm', [0, 60, 1]],
  ['cm', [0, 6, 2]],
  ['deg', [0, 90, 0]],
  ['L/min', [40, 220, 0]],
  ['1', [1, 4, 2]],
]);

/** Decimals that break careless code. */
const odd = ['0', '0.0', '-0.50', '4.00000000000000000', '5.12345678901234567', '0.1000'] as const;

/** A figure that a face or neck can have; what it is as a rule does not count. */
function reading({ random, size }: Sampling, measure: Lean<Measure>, unit: string): string {
  if (measure.type === 'count') return String(random.int(0, 6));
  const possible = limitsOf(measure.code)?.possible;
  if (size === 'edge' && random.chance(0.2)) {
    const drawn = random.pick(odd);
    const figure = canonicalFigure(drawn, unit);
    if (possible === undefined || (figure !== undefined && isWithinSpan(figure, possible)))
      return drawn;
  }
  const [low, high, digits] = bounds.get(unit) ?? [0, 10, 1];
  const one = canonicalFigure('1', unit) ?? 1;
  return sampleDecimal(
    random,
    Math.max(low, (possible?.low ?? low) / one),
    Math.min(high, (possible?.high ?? high) / one),
    random.int(0, digits),
  );
}
