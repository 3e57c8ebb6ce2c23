import { isState, noRegion, placed, reasonOf, unknownWord } from '../../convert/build/built.ts';
import { type QuantityText, quantityParts, readQuantity } from '../../convert/build/quantity.ts';
import { issue } from '../../convert/issue.ts';
import type { MeasurementTarget } from '../../convert/mapping/target.ts';
import type { Issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { notDone, type StatementConversion, type TargetConversion } from '../facets/conversion.ts';
import type { Measurement } from './statement.ts';

export const measurementConversion: StatementConversion<Measurement> = {
  about: ({ measure, region, conditions = [] }) => [measure, region, ...conditions],
  several: true,
  ofFinding: true,
};

export const measurementTarget: TargetConversion<MeasurementTarget> = {
  codes: ({ measure, conditions = [] }) => [
    ['measures', measure, 'measure'],
    ...conditions.map((code) => ['measureConditions', code, 'conditions'] as const),
  ],
  home: ({ measure }, catalogue) => catalogue.measures.get(measure)?.region,
  laterality: ({ measure, region }, catalogue) => {
    const row = catalogue.measures.get(measure);
    if (row?.laterality === 'whole' || row?.laterality === 'midline') return 'whole';
    return catalogue.regions.get(region ?? row?.region ?? '')?.laterality;
  },
  conditions: true,
  meanings: () => [],
  states: notDone,
  issues: (target, path, { catalogue }) => measureIssues(target, path, catalogue),
  build: ({ target }, reading, plan) => {
    const { meaning } = reading;
    const conditions = reading.conditions ?? target.conditions;
    const measure = plan.catalogue.measures.get(target.measure);
    const region = reading.region ?? target.region ?? measure?.region;
    if (region === undefined || measure === undefined) return noRegion;
    const shared = {
      kind: 'measurement' as const,
      ...placed(region, reading),
      measure: target.measure,
      ...(conditions !== undefined && { conditions }),
    };
    if (isState(meaning)) {
      const unit = target.unit ?? measure.unit;
      return { statements: [{ ...shared, unit, unusable: reasonOf(meaning) }] };
    }
    if (meaning !== undefined) return unknownWord({ reason: 'number' });
    const quantity = readQuantity(reading, target.unit, plan);
    if ('problem' in quantity) return quantity;
    const allowed = [measure.unit, ...(measure.units ?? [])];
    if (!allowed.includes(quantity.unit)) {
      return {
        problem: 'wrong-unit',
        facts: { reason: 'measure', units: allowed },
      };
    }
    if (!isExpected(quantity, target)) {
      return {
        problem: 'implausible-value',
        facts: {
          reason: 'limits',
          minimum: target.expect?.low,
          maximum: target.expect?.high,
          unit: target.unit,
        },
      };
    }
    return { statements: [{ ...shared, ...quantityParts(quantity) }] };
  },
};

function measureIssues(target: MeasurementTarget, path: Path, catalogue: Catalogue): Issue[] {
  const measure = catalogue.measures.get(target.measure);
  if (measure === undefined) return [];
  const { rangeOf, scale } = measure;
  if (rangeOf !== undefined || scale !== undefined) {
    const at = [...path, 'measure'];
    return [
      scale === undefined
        ? issue('unknown-code', at, { reason: 'part-of-measure', code: rangeOf ?? '' })
        : issue('unknown-code', at, { reason: 'measure-of-scale', code: scale }),
    ];
  }
  const allowed = [measure.unit, ...(measure.units ?? [])];
  if (target.unit === undefined || allowed.includes(target.unit)) return [];
  return [issue('wrong-unit', [...path, 'unit'], { reason: 'measure', units: allowed })];
}

/** The limits are in the unit that the mapping states; a value in another unit is not held to them. */
function isExpected(quantity: QuantityText, { expect, unit }: MeasurementTarget): boolean {
  if (expect === undefined || quantity.unit !== unit) return true;
  const value = Number(quantity.value);
  const { low, high } = expect;
  return (
    (low === undefined || value >= Number(low)) && (high === undefined || value <= Number(high))
  );
}
