import type { Key, Side } from '../../model/primitive.ts';
import type { Measurement, ScaleItem, Statement } from '../../model/statement.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { Lean, Measure, Region, Scale } from '../../terminology/types.ts';
import { type Stated, sampleReason } from './regions.ts';
import { maybe, type Sampling, sampleDecimal, sampleDetails, sampleText } from './sampling.ts';

/** True for a row that is stated as a measurement and not as a score or a test. */
export function isMeasured(row: Lean<Measure>): boolean {
  const elsewhere = row.rangeOf ?? row.scale ?? row.test;
  return elsewhere === undefined && (row.type === 'quantity' || row.type === 'count');
}

/** A measure on each side that a region has; `about` is the key of the finding that was measured. */
export function measurementStatements(
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

function reading({ random, size }: Sampling, measure: Lean<Measure>, unit: string): string {
  if (measure.type === 'count') return String(random.int(0, 6));
  if (size === 'edge' && random.chance(0.2)) {
    return random.pick([
      '0',
      '0.0',
      '-0.50',
      '4.00000000000000000',
      '123456789012345678',
      '0.1000',
    ]);
  }
  const [low, high, digits] = bounds.get(unit) ?? [0, 10, 1];
  return sampleDecimal(random, low, high, random.int(0, digits));
}

export function scaleStatement(
  sampling: Sampling,
  scale: Lean<Scale>,
  lesion: (Statement & { readonly kind: 'finding' }) | undefined,
): Stated {
  const { random, catalogue } = sampling;
  const sited = random.chance(0.5) ? catalogue.regions.get(scale.region) : undefined;
  const { sides, required } = lateralitySides[sited?.laterality ?? scale.laterality];
  const items = scale.items ?? [];
  const given = random.some(items, random.int(0, items.length));
  return {
    kind: 'scale-score',
    scale: scale.code,
    version: random.pick(scale.versions),
    score:
      scale.type === 'ordinal'
        ? random.pick(scale.grades ?? []).code
        : random.int(0, scale.max ?? 10),
    ...(sited !== undefined && { region: sited.code }),
    ...((required || random.chance(0.2)) && { side: random.pick(sides) }),
    ...(given.length > 0 && {
      items: given.map(
        ({ code, max }): ScaleItem => ({
          item: code,
          value: max === undefined ? random.chance(0.5) : random.int(0, max),
        }),
      ),
    }),
    ...(scale.region === 'skin' && lesion !== undefined && { about: lesion.key }),
    ...sampleDetails(sampling),
  };
}
