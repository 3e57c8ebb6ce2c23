import type { CheckContext } from '../context.ts';
import {
  type FacialPattern,
  facialMovementStated,
  facialPattern,
} from '../facts/facial-pattern.ts';
import { type OneSide, oneSides } from '../places/sides.ts';
import type { ComputationRule, RuleFinding } from '../rule.ts';

const texts: { readonly [P in FacialPattern]: string } = {
  'forehead spared': 'lower face weak, forehead spared (central pattern)',
  'whole side':
    'forehead and lower face weak, the whole side (peripheral pattern, as some strokes show too)',
  mixed: 'lower face and eye closure weak, forehead normal (as many central palsies show)',
  'lower face not weak': 'no weakness of the lower face',
};

/** Fires when the lower face is weak, and says whether the forehead is. A pattern, no diagnosis. */
export const r19FacialPattern: ComputationRule = {
  id: 'R19',
  title: 'Pattern of facial weakness',
  kind: 'computation',
  version: '2',
  severity: 'information',
  source:
    'GPnotebook and University of Aberdeen teaching pages on facial nerve palsy; Wongwandee M 2025, Neurol Int 17:12 (closing of the eyes and forehead are weak in many central palsies)',
  evidence: 'second-hand',
  run: (context) =>
    facialMovementStated(context) ? oneSides.map((side) => patternFinding(context, side)) : [],
};

function patternFinding(context: CheckContext, side: OneSide): RuleFinding {
  const { pattern, used, missing } = facialPattern(context, side);
  const base = { on: side, side, inputsUsed: used, inputsMissing: missing };
  if (pattern === undefined) {
    return {
      ...base,
      outcome: 'not-evaluable',
      text: `Pattern of facial weakness on the ${side}: movements are missing.`,
    };
  }
  return {
    ...base,
    outcome: pattern === 'lower face not weak' ? 'does-not-fire' : 'fires',
    text: `Face on the ${side}: ${texts[pattern]}. A sound brow can wrinkle the skin of the other side.`,
    values: [{ name: 'pattern', value: pattern }],
  };
}
