import type { Catalogue } from '../../terminology/catalogue.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { Laterality } from '../../terminology/types.ts';
import type { Statement } from '../statement.ts';
import type { ExamRule } from './rule.ts';

export { lateralitySides };

/** A paired place needs its side, and no place takes a side that it does not have. */
export const possibleSides: ExamRule = ({ exam, catalogue, report }) => {
  exam.statements.forEach((statement, at) => {
    const laterality = lateralityOf(statement, catalogue);
    if (laterality === undefined || !('side' in statement || needsSide(statement))) return;
    const { sides, required } = lateralitySides[laterality];
    const side = 'side' in statement ? statement.side : undefined;
    const expected = sides.join(', ');
    if (side === undefined) {
      if (required && needsSide(statement)) {
        report('missing-side', ['statements', at, 'side'], 'the side is missing', { expected });
      }
    } else if (!sides.includes(side)) {
      report('impossible-side', ['statements', at, 'side'], 'this place can not have that side', {
        expected,
        value: side,
      });
    }
  });
  exam.conditions?.forEach(({ regions = [], side }, at) => {
    if (side === undefined) return;
    for (const region of regions) {
      const laterality = catalogue.regions.get(region)?.laterality;
      if (laterality === undefined || lateralitySides[laterality].sides.includes(side)) continue;
      report('impossible-side', ['conditions', at, 'side'], 'this place can not have that side', {
        expected: lateralitySides[laterality].sides.join(', '),
        value: side,
      });
    }
  });
};

/** A complaint or a note may be about a region as such; what was examined has a side. */
function needsSide({ kind }: Statement): boolean {
  return (
    kind !== 'note' && kind !== 'symptom' && kind !== 'image' && kind !== 'sensation-comparison'
  );
}

/** How the place of a statement is divided; undefined where it has none or its code is unknown. */
export function lateralityOf(statement: Statement, catalogue: Catalogue): Laterality | undefined {
  switch (statement.kind) {
    case 'sensation':
      return catalogue.testPoints.get(statement.point)?.laterality;
    case 'sensation-comparison':
      return undefined;
    case 'movement':
    case 'function-test':
      return catalogue.testPoints.get(statement.test)?.laterality;
    case 'measurement':
      return measuredLaterality(statement.measure, statement.region, catalogue);
    case 'scale-score':
      return statement.region === undefined
        ? catalogue.scales.get(statement.scale)?.laterality
        : catalogue.regions.get(statement.region)?.laterality;
    default:
      return statement.region === undefined
        ? undefined
        : catalogue.regions.get(statement.region)?.laterality;
  }
}

/**
 * In its usual place a measure has sides of its own: a distance between the eyes has none although
 * eyes are paired, the travel of the jaw to one side has one. Elsewhere the region decides.
 */
function measuredLaterality(
  measure: string,
  region: string,
  catalogue: Catalogue,
): Laterality | undefined {
  const row = catalogue.measures.get(measure);
  if (row?.region === region) return row.laterality;
  return catalogue.regions.get(region)?.laterality;
}
