import type { Sensation } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import type { OneSide } from '../places/sides.ts';
import type { ComputationRule, RuleFinding } from '../rule.ts';
import { lowered } from '../words/english.ts';

/** Fires when a point feels otherwise on the two sides, one modality at a time. */
export const r46SensationSides: ComputationRule = {
  id: 'R46',
  title: 'Side difference of sensation',
  kind: 'computation',
  version: '1',
  severity: 'information',
  source: 'common practice, no source',
  evidence: 'common-practice',
  run: (context) =>
    [...context.catalogue.testPoints.values()]
      .filter((row) => row.group === 'sensation')
      .flatMap((row) => {
        const stated = context.index.about('sensation', row.code);
        const modalities = new Set(
          stated.flatMap((one) => one.results.map(({ modality }) => modality)),
        );
        return [...modalities].map((modality) =>
          sideFinding(context, stated, row.display, modality),
        );
      }),
};

function sideFinding(
  context: CheckContext,
  stated: readonly Sensation[],
  display: string,
  modality: string,
): RuleFinding {
  const right = resultOn(context, stated, 'right', modality);
  const left = resultOn(context, stated, 'left', modality);
  const name = `${display}, ${lowered(context.catalogue.modalities.get(modality)?.display ?? modality)}`;
  const on = `${stated[0]?.point ?? ''} ${modality}`;
  if (right === undefined || left === undefined) {
    return {
      outcome: 'not-evaluable',
      on,
      inputsUsed: [right, left].flatMap((one) => one?.key ?? []),
      inputsMissing: [
        ...(right === undefined ? [`${name} on the right`] : []),
        ...(left === undefined ? [`${name} on the left`] : []),
      ],
      text: `${name}: the sides cannot be compared.`,
    };
  }
  return {
    outcome: right.result === left.result ? 'does-not-fire' : 'fires',
    on,
    inputsUsed: [right.key, left.key],
    inputsMissing: [],
    text: `${name}: right ${right.result}, left ${left.result}.`,
  };
}

function resultOn(
  { catalogue }: CheckContext,
  stated: readonly Sensation[],
  side: OneSide,
  modality: string,
): { readonly result: string; readonly key: string } | undefined {
  for (const one of stated) {
    if (one.side !== side) continue;
    const result = one.results.find((tried) => tried.modality === modality)?.result;
    if (result === undefined || catalogue.sensationResults.get(result)?.untested === true) continue;
    return { result, key: one.key };
  }
  return undefined;
}
