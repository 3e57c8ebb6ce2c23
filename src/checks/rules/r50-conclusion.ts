import { ruleTitles } from '../../issues/english/rules.ts';
import type { CheckContext } from '../context.ts';
import { isAbnormal } from '../facts/signs.ts';
import { sideNamed } from '../places/side-words.ts';
import { coversSide, type OneSide, otherSide } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

/**
 * Fires where the conclusion names only the side on which nothing abnormal was stated, or says that
 * nothing changed while a figure or sign did. Words are read for these two things and no others.
 */
export const r50Conclusion: ConsistencyRule = {
  id: 'R50',
  title: ruleTitles.R50,
  kind: 'consistency',
  version: '1',
  severity: 'check',
  code: 'check-statement',
  source: 'common practice, no source; wrong side is a recognised error in records',
  evidence: 'common-practice',
  run: (context) => {
    const text = context.exam.conclusion?.text;
    return text === undefined ? [] : [...sideOf(context, text), ...changeOf(context, text)];
  },
};

function sideOf(context: CheckContext, text: string): readonly RuleFinding[] {
  const named = sideNamed(text);
  if (named !== 'right' && named !== 'left') return [];
  const { index, catalogue } = context;
  const abnormal = index.all('finding').filter((one) => isAbnormal(one, catalogue));
  const sided = abnormal.filter(({ side }) => isOneSided(side));
  const there = sided.filter(({ side }) => coversSide(side, named));
  const base = { on: 'side', side: named, inputsUsed: sided.map(({ key }) => key) };
  if (sided.length === 0) {
    const missing = ['an abnormal sign on one side'];
    const told = `The conclusion names the ${named}, and no abnormal sign has a side.`;
    return [{ ...base, outcome: 'not-evaluable', inputsMissing: missing, text: told }];
  }
  const fires = there.length === 0;
  return [
    {
      ...base,
      outcome: fires ? 'fires' : 'does-not-fire',
      inputsMissing: [],
      text: fires
        ? `The conclusion names the ${named} only, and every abnormal sign with a side is on the ${otherSide(named)}.`
        : `The conclusion names the ${named}, and an abnormal sign is stated there.`,
    },
  ];
}

function isOneSided(side: string | undefined): boolean {
  const sides: readonly OneSide[] = ['right', 'left'];
  return sides.some((one) => side === one || side === `${one}-of-midline`);
}

/** English and German words for no change, and not those of what is to stay so. */
const unchanged =
  /\b(?:unchanged|no change|not changed|stable|same as (?:before|last)|unverändert|keine veränderung)\b/i;

function changeOf({ comparisons, prior }: CheckContext, text: string): readonly RuleFinding[] {
  if (!unchanged.test(text)) return [];
  const base = { on: 'change' };
  if (prior === undefined) {
    const missing = ['the exam before'];
    const told = 'The conclusion says that nothing changed, and there is no exam to compare with.';
    return [
      { ...base, outcome: 'not-evaluable', inputsUsed: [], inputsMissing: missing, text: told },
    ];
  }
  const changed = comparisons.filter(
    ({ change, figures }) => change === 'changed' && figures?.withinResolution !== true,
  );
  return [
    {
      ...base,
      outcome: changed.length > 0 ? 'fires' : 'does-not-fire',
      inputsUsed: changed.flatMap(({ now }) => now ?? []),
      inputsMissing: [],
      text:
        changed.length > 0
          ? `The conclusion says that nothing changed, and ${changed.length} thing(s) did.`
          : 'The conclusion says that nothing changed, and no figure or sign did.',
    },
  ];
}
