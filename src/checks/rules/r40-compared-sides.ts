import { ruleTitles } from '../../issues/english/rules.ts';
import type { SensationComparison } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import type { OneSide } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';
import { lowered } from '../words/english.ts';

/** Only these three can be put in order; a burning or shifting sensation is neither more nor less. */
const order: ReadonlyMap<string, number> = new Map([
  ['absent', 0],
  ['reduced', 1],
  ['normal', 2],
]);

/** Fires when the comparison of the sides says the reverse of the two results, or one was not tested. */
export const r40ComparedSides: ConsistencyRule = {
  id: 'R40',
  title: ruleTitles.R40,
  kind: 'consistency',
  version: '1',
  severity: 'check',
  code: 'check-statement',
  source: 'common practice, no source; a comparison is a result of its own and no sum of two',
  evidence: 'common-practice',
  run: (context) =>
    context.index
      .all('sensation-comparison')
      .filter((one) => one.result !== 'not-compared')
      .map((one) => comparedFinding(context, one)),
};

function comparedFinding(context: CheckContext, compared: SensationComparison): RuleFinding {
  const right = resultOn(context, compared, 'right');
  const left = resultOn(context, compared, 'left');
  const point = lowered(
    context.catalogue.testPoints.get(compared.point)?.display ?? compared.point,
  );
  const base = { on: compared.key };
  const untested = untestedOn(context, compared);
  if (untested !== undefined) {
    return {
      ...base,
      outcome: 'fires',
      inputsUsed: [compared.key, untested],
      inputsMissing: [],
      text: `Comparison of the sides, ${point}: one of the sides was not tested.`,
    };
  }
  if (right === undefined || left === undefined) {
    return {
      ...base,
      outcome: 'not-evaluable',
      inputsUsed: [compared.key],
      inputsMissing: [`normal, reduced or absent on each side, ${point}`],
      text: `Comparison of the sides, ${point}: no pair of results to hold it to.`,
    };
  }
  const difference = right.rank - left.rank;
  // Two results alike leave room for a finer difference that the patient felt.
  const fires =
    (compared.result === 'equal' && difference !== 0) ||
    (compared.result === 'right-less' && difference > 0) ||
    (compared.result === 'left-less' && difference < 0);
  return {
    ...base,
    outcome: fires ? 'fires' : 'does-not-fire',
    inputsUsed: [compared.key, right.key, left.key],
    inputsMissing: [],
    text: fires
      ? `Comparison of the sides, ${point}: it says otherwise than the results of the two sides.`
      : `Comparison of the sides, ${point}: it fits the results of the two sides.`,
  };
}

/** Key of a statement that one side was not tested by the modality by which the sides are compared. */
function untestedOn(
  { index, catalogue }: CheckContext,
  { point, modality }: SensationComparison,
): string | undefined {
  const untested = (code: string): boolean =>
    catalogue.sensationResults.get(code)?.untested === true;
  return index
    .about('sensation', point)
    .find(({ results }) => results.some((one) => one.modality === modality && untested(one.result)))
    ?.key;
}

function resultOn(
  { index }: CheckContext,
  compared: SensationComparison,
  side: OneSide,
): { readonly rank: number; readonly key: string } | undefined {
  for (const sensation of index.about('sensation', compared.point)) {
    if (sensation.side !== side) continue;
    const result = sensation.results.find((one) => one.modality === compared.modality)?.result;
    const rank = result === undefined ? undefined : order.get(result);
    if (rank !== undefined) return { rank, key: sensation.key };
  }
  return undefined;
}
