import { standingOf } from '../../kinds/registries/meanings.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import { isWithin } from './places.ts';
import type { ExamRule } from './rule.ts';

/** An exception is a member of the region that is spoken of, with a side where it has sides. */
export const memberExceptions: ExamRule = ({ exam, catalogue, said: saidBy, report }) => {
  exam.statements.forEach((statement, at) => {
    const [said] = saidBy(statement);
    if (said === undefined || said.except.length === 0) return;
    const { region: whole } = standingOf(statement, catalogue);
    said.except.forEach(({ region, side }, e) => {
      const path = ['statements', at, 'except', e];
      const row = catalogue.regions.get(region);
      if (row === undefined || whole === undefined) return;
      if (region === whole || !isWithin(region, whole, catalogue)) {
        report('contradiction', [...path, 'region'], { reason: 'not-a-member' }, { value: region });
      }
      const { sides, required } = lateralitySides[row.laterality];
      if (side === undefined && required) {
        report('missing-side', [...path, 'side'], { reason: 'missing', codes: sides });
      } else if (side !== undefined && !sides.includes(side)) {
        const facts = { reason: 'place', codes: sides } as const;
        report('impossible-side', [...path, 'side'], facts, { value: side });
      }
    });
  });
};
