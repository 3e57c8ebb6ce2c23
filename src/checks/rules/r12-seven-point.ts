import { lesionsOf } from '../facts/lesions.ts';
import { SEVEN_POINT_LIMIT, sevenPoint } from '../facts/seven-point.ts';
import type { ComputationRule, RuleFinding, RuleOutcome } from '../rule.ts';

/** Total of the weighted 7-point checklist of each pigmented lesion; fires from 3 on. */
export const r12SevenPoint: ComputationRule = {
  id: 'R12',
  title: 'Weighted 7-point checklist',
  kind: 'computation',
  version: '1',
  severity: 'information',
  source:
    'checklist as in NICE NG12, read in copies; Walter FM et al. 2013, Br J Gen Pract 63:e345-353',
  evidence: 'second-hand',
  run: (context) =>
    lesionsOf(context).map((lesion): RuleFinding => {
      const { least, most, used, missing } = sevenPoint(context, lesion);
      const total = missing.length === 0 ? String(least) : `${least} to ${most}`;
      return {
        outcome: outcomeFor(least, most),
        on: lesion.key,
        inputsUsed: used,
        inputsMissing: missing,
        text: `Weighted 7-point checklist: ${total} of 10. It is for pigmented lesions; one strong concern is enough whatever the total, and a nodular or unpigmented lesion can score low.`,
        values: [
          { name: 'total', value: String(least) },
          ...(missing.length === 0
            ? []
            : [{ name: 'highest possible total', value: String(most) }]),
        ],
      };
    }),
};

function outcomeFor(least: number, most: number): RuleOutcome {
  if (least >= SEVEN_POINT_LIMIT) return 'fires';
  return most >= SEVEN_POINT_LIMIT ? 'not-evaluable' : 'does-not-fire';
}
