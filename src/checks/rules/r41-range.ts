import { ruleTitles } from '../../issues/english/rules.ts';
import type { CheckContext } from '../context.ts';
import { measureName } from '../facts/measured.ts';
import { ageAtLeast } from '../facts/stated.ts';
import { isForAnyone, type RangeVerdict, rangeVerdicts } from '../figures/ranges.ts';
import { sideText } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';
import { listText } from '../words/check-words.ts';
import { englishChecks } from '../words/english.ts';

const ADULT = 18;

/** Fires when a value lies outside the ranges of the chosen populations. Says so, and no more. */
export const r41Range: ConsistencyRule = {
  id: 'R41',
  title: ruleTitles.R41,
  kind: 'consistency',
  version: '1',
  severity: 'information',
  code: 'check-measurement',
  source: 'ranges of the table of measures, each with its population and source',
  evidence: 'read',
  run: (context) => {
    const verdicts = rangeVerdicts(context);
    const unchosen = verdicts.filter((one) => one.verdict === 'no-population');
    const chosen = verdicts.filter((one) => one.verdict !== 'no-population');
    return [
      ...chosen.map((one) => rangeFinding(context, one)),
      ...(unchosen.length > 0 ? [noPopulation(unchosen)] : []),
    ];
  },
};

function noPopulation(verdicts: readonly RangeVerdict[]): RuleFinding {
  return {
    outcome: 'not-evaluable',
    inputsUsed: verdicts.map((one) => one.statement.key),
    inputsMissing: ['the population to compare with, which the caller chooses'],
    text: `Reference ranges differ by population, and none was chosen for ${verdicts.length} value(s).`,
  };
}

function rangeFinding(
  context: CheckContext,
  { statement, verdict, ranges }: RangeVerdict,
): RuleFinding {
  const name = `${measureName(context, statement.measure)} ${sideText(statement.side)}`.trim();
  const base = {
    on: statement.key,
    ...(statement.side !== undefined && { side: statement.side }),
    inputsUsed: [statement.key],
  };
  const adult = ageAtLeast(context, ADULT);
  if (verdict === 'no-figure' || (adult.holds !== true && !ranges.every(isForAnyone))) {
    const missing = adult.holds === false ? ['a range for this age'] : adult.missing;
    return {
      ...base,
      outcome: 'not-evaluable',
      inputsMissing: verdict === 'no-figure' ? ['an exact figure'] : missing,
      text: `${name}: it cannot be held to a range.`,
    };
  }
  const told = ranges.map(({ low, high, population, source }) => {
    const from = low === undefined ? 'up to' : high === undefined ? `${low} or more` : `${low} to`;
    return `${[from, high].filter((part) => part !== undefined).join(' ')} (${population}; ${source})`;
  });
  return {
    ...base,
    outcome: verdict === 'outside' ? 'fires' : 'does-not-fire',
    inputsMissing: [],
    text: `${name}: ${verdict === 'outside' ? 'outside' : 'not outside'} ${listText(englishChecks, told)}.`,
  };
}
