import { lesionsOf } from '../facts/lesions.ts';
import { figureText, isMeasured } from '../facts/measured.ts';
import { compare, whole } from '../figures/decimal.ts';
import type { ComputationRule, RuleFinding } from '../rule.ts';

const ABCDE = whole(6);
const SEVEN_POINT = whole(7);

/** Fires between the two limits, where ABCDE counts the diameter and the 7-point checklist does not. */
export const r31DiameterBoundary: ComputationRule = {
  id: 'R31',
  title: 'Diameter on which the two checklists differ',
  kind: 'computation',
  version: '1',
  severity: 'information',
  source:
    'Abbasi NR et al. 2004, JAMA 292:2771-2776 (more than 6 mm); NICE NG12 checklist (7 mm or more)',
  evidence: 'second-hand',
  run: (context) =>
    lesionsOf(context).map(({ key, diameter }): RuleFinding => {
      if (!isMeasured(diameter) || diameter.bound !== undefined) {
        return {
          outcome: 'not-evaluable',
          on: key,
          inputsUsed: [],
          inputsMissing: [isMeasured(diameter) ? 'the exact diameter' : diameter.missing],
          text: 'The diameter of the lesion is not known.',
        };
      }
      const abcde = compare(diameter.value, ABCDE) > 0;
      const sevenPoint = compare(diameter.value, SEVEN_POINT) >= 0;
      const fires = abcde && !sevenPoint;
      return {
        outcome: fires ? 'fires' : 'does-not-fire',
        on: key,
        inputsUsed: [diameter.statement.key],
        inputsMissing: [],
        text: fires
          ? `Diameter ${figureText(diameter)}: counts for ABCDE (more than 6 mm) and not for the 7-point checklist (7 mm or more).`
          : `Diameter ${figureText(diameter)}: both checklists agree.`,
      };
    }),
};
