import type { CheckContext } from '../context.ts';
import { isTested, movementOn } from '../facts/movements.ts';
import type { ComputationRule, RuleFinding } from '../rule.ts';

/** Fires when a movement is graded differently on the two sides. */
export const r45MovementSides: ComputationRule = {
  id: 'R45',
  title: 'Side difference of a movement',
  kind: 'computation',
  version: '1',
  severity: 'information',
  source: 'common practice, no source; the power words are those of this library',
  evidence: 'common-practice',
  run: (context) =>
    [...context.catalogue.testPoints.values()]
      .filter((row) => row.laterality === 'paired' && row.group !== 'sensation')
      .filter((row) => context.index.about('movement', row.code).length > 0)
      .map((row) => sideFinding(context, row.code, row.display)),
};

function sideFinding(context: CheckContext, test: string, display: string): RuleFinding {
  const right = movementOn(context, test, 'right');
  const left = movementOn(context, test, 'left');
  if (!isTested(right) || !isTested(left)) {
    return {
      outcome: 'not-evaluable',
      on: test,
      inputsUsed: [right, left].filter(isTested).map((one) => one.key),
      inputsMissing: [right, left].flatMap((one) => (isTested(one) ? [] : [one.missing])),
      text: `${display}: the sides cannot be compared.`,
    };
  }
  const fires = right.grade !== left.grade;
  const ranked = right.rank !== undefined && left.rank !== undefined;
  const weaker = ranked && (right.rank ?? 0) > (left.rank ?? 0) ? 'right' : 'left';
  return {
    outcome: fires ? 'fires' : 'does-not-fire',
    on: test,
    ...(fires && ranked && { side: weaker }),
    inputsUsed: [...new Set([right.key, left.key])],
    inputsMissing: [],
    text: `${display}: right ${right.grade}, left ${left.grade}${fires && ranked ? `, ${weaker} weaker` : ''}.`,
  };
}
