import { measuredIn } from '../../kinds/measurement/check.ts';
import { figuresText } from '../compare/figures-text.ts';
import type { ComputationRule, RuleFinding } from '../rule.ts';

const skinMeasures: ReadonlySet<string> = new Set(['lesion-max', 'lesion-perp', 'lesion-elev']);

/** Change of a skin lesion: less than a ruler can tell is not a change; more asks for a look, not for a cause. */
export const r10SkinChange: ComputationRule = {
  id: 'R10',
  title: 'Change of a skin lesion',
  kind: 'computation',
  version: '1',
  severity: 'check',
  source:
    'resolution of a millimetre ruler, common practice; no published limit of growth was found',
  evidence: 'common-practice',
  run: ({ comparisons, limit }) => {
    if (limit('skin-change') === undefined) return [];
    return measuredIn(comparisons)
      .filter((one) => skinMeasures.has(one.code))
      .map((one): RuleFinding => {
        const base = {
          on: one.identity,
          ...(one.side !== undefined && { side: one.side }),
          inputsUsed: one.now === undefined ? [] : [one.now],
        };
        if (one.figures === undefined) {
          const why = one.reason ?? 'no comparison';
          return {
            ...base,
            outcome: 'not-evaluable',
            inputsMissing: [why],
            text: `Skin lesion: no change is claimed, ${why}.`,
          };
        }
        const changed = one.change === 'changed';
        return {
          ...base,
          outcome: changed ? 'fires' : 'does-not-fire',
          inputsMissing: [],
          text: changed
            ? `Skin lesion: ${figuresText(one)}. Review the change; it is no diagnosis.`
            : `Skin lesion: ${figuresText(one)}.`,
        };
      });
  },
};
