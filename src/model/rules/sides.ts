import { standingOf } from '../../kinds/registries/meanings.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { ExamRule } from './rule.ts';

/** A paired place needs its side, and no place takes a side that it does not have. */
export const possibleSides: ExamRule = ({ exam, catalogue, report }) => {
  exam.statements.forEach((statement, at) => {
    const { laterality, side, needsSide } = standingOf(statement, catalogue);
    if (laterality === undefined) return;
    const { sides, required } = lateralitySides[laterality];
    if (side === undefined) {
      if (required && needsSide) {
        report('missing-side', ['statements', at, 'side'], { reason: 'missing', codes: sides });
      }
    } else if (!sides.includes(side)) {
      report(
        'impossible-side',
        ['statements', at, 'side'],
        { reason: 'place', codes: sides },
        {
          value: side,
        },
      );
    }
  });
  exam.conditions?.forEach(({ regions = [], side }, at) => {
    if (side === undefined) return;
    for (const region of regions) {
      const laterality = catalogue.regions.get(region)?.laterality;
      if (laterality === undefined || lateralitySides[laterality].sides.includes(side)) continue;
      report(
        'impossible-side',
        ['conditions', at, 'side'],
        { reason: 'place', codes: lateralitySides[laterality].sides },
        {
          value: side,
        },
      );
    }
  });
};
