import { ruleTitles } from '../../issues/english/rules.ts';
import type { ScaleItem, ScaleScore } from '../../model/statement.ts';
import type { Lean, Scale } from '../../terminology/types.ts';
import type { CheckContext } from '../context.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

/** Fires when the total of a summed scale is not what its items add up to. */
export const r39ScaleTotal: ConsistencyRule = {
  id: 'R39',
  title: ruleTitles.R39,
  kind: 'consistency',
  version: '1',
  severity: 'error',
  code: 'total-mismatch',
  source: 'arithmetic; weights as in the table of scales with their sources',
  evidence: 'second-hand',
  run: (context) =>
    context.index.all('scale-score').flatMap((score) => totalFinding(context, score)),
};

function totalFinding({ catalogue }: CheckContext, score: ScaleScore): readonly RuleFinding[] {
  const scale = catalogue.scales.get(score.scale);
  if (scale?.type !== 'sum' || scale.items === undefined || typeof score.score !== 'number') {
    return [];
  }
  const base = { on: score.key, inputsUsed: [score.key] };
  if (score.items === undefined) {
    return [
      {
        ...base,
        outcome: 'not-evaluable',
        inputsMissing: ['the items of the scale'],
        text: `${scale.display}: the total cannot be checked without its items.`,
      },
    ];
  }
  const { least, most, open } = bounds(scale, score.items);
  const fires = score.score < least || score.score > most;
  const sum = least === most ? String(least) : `${least} to ${most}`;
  return [
    {
      ...base,
      outcome: fires ? 'fires' : 'does-not-fire',
      inputsMissing: open,
      text: fires
        ? `${scale.display}: the total is ${score.score} and the items add up to ${sum}.`
        : `${scale.display}: the total of ${score.score} fits its items.`,
      values: [{ name: 'items add up to', value: String(least) }],
    },
  ];
}

/** Lowest and highest total that the stated items allow; an open item can give anything it has. */
function bounds(
  scale: Lean<Scale>,
  items: readonly ScaleItem[],
): { readonly least: number; readonly most: number; readonly open: readonly string[] } {
  let least = 0;
  let most = 0;
  const open: string[] = [];
  for (const row of scale.items ?? []) {
    const stated = items.find((one) => one.item === row.code);
    if (stated === undefined) {
      most += row.weight * (row.max ?? 1);
      open.push(row.display);
    } else {
      const points = row.weight * Number(stated.value);
      least += points;
      most += points;
    }
  }
  return { least, most, open };
}
