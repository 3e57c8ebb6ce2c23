import type { Path } from '../../issues/path.ts';
import type { Code, Decimal, Key, UnitCode } from '../../model/primitive.ts';
import type { RuleContext } from '../../model/rules/rule.ts';
import { canonicalFigure, liesOutside, limitsOf } from '../../terminology/limits.ts';
import type { Examined, Reason } from '../facets/base.ts';
import type { Form } from '../facets/form.ts';
import { atRegion, type Meaning } from '../facets/meaning.ts';

/** A quantity, with every reading that was taken. */
export interface Measurement extends Examined {
  readonly kind: 'measurement';
  /** Code of terminology/measures.json. */
  readonly measure: Code;
  /** The value reported. Left out only when `unusable` says why there is none. */
  readonly value?: Decimal;
  readonly comparator?: '<' | '<=' | '>=' | '>';
  readonly unit: UnitCode;
  /**
   * Every reading, in the order taken and in the same unit.
   * @minItems 1
   * @maxItems 1000
   */
  readonly readings?: readonly Decimal[];
  /** How `value` came from the readings. */
  readonly convention?: 'single' | 'mean' | 'median' | 'maximum' | 'minimum' | 'last';
  /**
   * Code of terminology/measure-conditions.json: dim light, with vertical overlap, assisted ...
   * @minItems 1
   */
  readonly conditions?: readonly Code[];
  readonly unusable?: Reason;
  /** Key of the finding that was measured. */
  readonly about?: Key;
  /** The value was estimated and not read off an instrument. */
  readonly estimated?: boolean;
}

export const measurementMeaning: Meaning<Measurement> = {
  subject: ({ measure }) => ({ table: 'measures', code: measure }),
  standing: (measurement, catalogue) => {
    const standing = atRegion(measurement, catalogue);
    // In its usual place a measure has sides of its own: a distance between the eyes has none
    // although eyes are paired, the travel of the jaw to one side has one. Elsewhere the region decides.
    const row = catalogue.measures.get(measurement.measure);
    return row?.region === measurement.region
      ? { ...standing, laterality: row.laterality }
      : standing;
  },
  said: ({ measure, value, methods = [] }) => [
    {
      polarity: value === undefined ? 'none' : 'states',
      of: { table: 'measures', code: measure },
      methods: ['measurement', ...methods],
    },
  ],
};

export const measurementForm: Form<Measurement> = {
  codes: ({ measure, unusable, conditions = [] }) => [
    { table: 'measures', code: measure, path: ['measure'] },
    { table: 'reasons', code: unusable?.code, path: ['unusable', 'code'] },
    ...conditions.map((code, i) => ({
      table: 'measureConditions' as const,
      code,
      path: ['conditions', i],
    })),
  ],
  complete: checkMeasurement,
  about: ({ about }) => (about === undefined ? [] : [{ key: about, path: ['about'] }]),
};

function checkMeasurement(
  measurement: Measurement,
  path: Path,
  { catalogue, report }: RuleContext,
): void {
  const { value, unusable, unit, readings, convention } = measurement;
  if ((value === undefined) === (unusable === undefined)) {
    report('contradiction', path, { reason: 'value-or-unusable' });
  }
  if (value === undefined && measurement.comparator !== undefined) {
    report('contradiction', [...path, 'comparator'], { reason: 'comparator' });
  }
  if (
    readings !== undefined &&
    readings.length > 1 &&
    convention === undefined &&
    value !== undefined
  ) {
    report('missing-property', [...path, 'convention'], { reason: 'convention' });
  }
  const measure = catalogue.measures.get(measurement.measure);
  if (measure === undefined) return;
  if (measure.rangeOf !== undefined || measure.scale !== undefined) {
    const facts =
      measure.scale === undefined
        ? ({ reason: 'part-of-measure', code: measure.rangeOf ?? '' } as const)
        : ({ reason: 'measure-of-scale', code: measure.scale } as const);
    report('unknown-code', [...path, 'measure'], facts, { value: measurement.measure });
  } else if (unit !== measure.unit && !measure.units?.includes(unit)) {
    report(
      'wrong-unit',
      [...path, 'unit'],
      { reason: 'measure', units: [measure.unit, ...(measure.units ?? [])] },
      { value: unit },
    );
  } else {
    checkFigures(measurement, measure.unit, path, report);
  }
}

/** A figure that no face or neck can give is a slip, and sent as it is it would be acted on. */
function checkFigures(
  { measure, value, comparator, readings = [], unit }: Measurement,
  canonicalUnit: string,
  path: Path,
  report: RuleContext['report'],
): void {
  const span = limitsOf(measure)?.possible;
  if (span === undefined) return;
  const stated = [
    { text: value, bound: comparator, below: ['value'] },
    ...readings.map((text, at) => ({ text, bound: undefined, below: ['readings', at] })),
  ];
  for (const { text, bound, below } of stated) {
    const figure = text === undefined ? undefined : canonicalFigure(text, unit);
    if (figure === undefined || !liesOutside(figure, span, bound)) continue;
    const { low, high } = span;
    report(
      'implausible-figure',
      [...path, ...below],
      { reason: 'limit', minimum: low, maximum: high, unit: canonicalUnit },
      { value: text },
    );
  }
}
