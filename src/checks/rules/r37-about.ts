import { ruleTitles } from '../../issues/english/rules.ts';
import { isFinding } from '../../kinds/finding/check.ts';
import type { Finding, Measurement, ScaleScore } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { isWithin } from '../places/regions.ts';
import { sidesOverlap } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

/** Fires when what was measured or scored is not a finding, is absent, or lies elsewhere. */
export const r37About: ConsistencyRule = {
  id: 'R37',
  title: ruleTitles.R37,
  kind: 'consistency',
  version: '1',
  severity: 'error',
  code: 'contradiction',
  source: 'common practice, no source',
  evidence: 'common-practice',
  run: (context) => {
    const all = [...context.index.all('measurement'), ...context.index.all('scale-score')];
    return all.flatMap((one) => aboutFinding(context, one));
  },
};

function aboutFinding(
  context: CheckContext,
  statement: Measurement | ScaleScore,
): readonly RuleFinding[] {
  if (statement.about === undefined) return [];
  const target = context.index.byKey.get(statement.about);
  const base = { on: statement.key, inputsMissing: [] };
  if (target === undefined) {
    return [
      {
        ...base,
        outcome: 'not-evaluable',
        inputsUsed: [statement.key],
        inputsMissing: ['the statement that it is about'],
        text: 'What was measured or scored is not in the exam.',
      },
    ];
  }
  const inputsUsed = [statement.key, target.key];
  const problem = isFinding(target)
    ? mismatch(context, statement, target)
    : 'it is about a statement that is no finding';
  return [
    {
      ...base,
      outcome: problem === undefined ? 'does-not-fire' : 'fires',
      inputsUsed,
      text:
        problem === undefined
          ? 'The measurement or score fits the finding that it is about.'
          : `A measurement or score does not fit: ${problem}.`,
    },
  ];
}

function mismatch(
  { catalogue }: CheckContext,
  statement: Measurement | ScaleScore,
  finding: Finding,
): string | undefined {
  if (finding.presence === 'absent') return 'the finding is stated as absent';
  if (!sidesOverlap(statement.side, finding.side)) return 'the finding is on another side';
  const { region } = statement;
  if (region === undefined) return undefined;
  // A measure of the skin is stated under that group for a lesion anywhere on face or neck.
  if (catalogue.regions.get(region)?.group === true) return undefined;
  const together =
    isWithin(catalogue, region, finding.region) || isWithin(catalogue, finding.region, region);
  return together ? undefined : 'the finding is in another region';
}
