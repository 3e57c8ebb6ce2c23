import { ruleTitles } from '../../issues/english/rules.ts';
import type { ScaleScore } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { isMeasured, measured } from '../facts/measured.ts';
import { isTested, lowerFace, movementOn, type TestedMovement } from '../facts/movements.ts';
import { coversSide, type OneSide, oneSides, sideText } from '../places/sides.ts';
import type { ConsistencyRule, RuleFinding } from '../rule.ts';

type Part = 'forehead' | 'closing gently' | 'closing tightly' | 'mouth';

/** Least and greatest weakness that a grade allows, as ranks: 0 normal, 1 slight, 2 obvious, 3 trace, 4 none. */
interface Allowed {
  readonly least: number;
  readonly most: number;
}

type Limits = { readonly [P in Part]?: Allowed };

const testsOf: { readonly [P in Part]: readonly string[] } = {
  forehead: ['frontalis'],
  'closing gently': ['orb-oculi-gentle'],
  'closing tightly': ['orb-oculi-forced'],
  mouth: lowerFace,
};

/**
 * The grades in terms of single movements, as wide as their wording allows: II has at most slight
 * weakness of eye and mouth; III still closes the eye; IV and V have no forehead and an open eye.
 */
const grades: ReadonlyMap<string, Limits> = new Map<string, Limits>([
  ['hb-1', all(0, 0)],
  ['hb-2', { forehead: span(0, 2), 'closing gently': span(0, 1), mouth: span(0, 1) }],
  ['hb-3', { forehead: span(0, 3), 'closing tightly': span(0, 2) }],
  ['hb-4', { forehead: span(3, 4), 'closing tightly': span(1, 4) }],
  ['hb-5', { forehead: span(3, 4), 'closing tightly': span(1, 4), mouth: span(2, 4) }],
  ['hb-6', all(4, 4)],
]);

/** Synkinesis alone can make a face with good movement a III or IV. */
const bySynkinesis: ReadonlySet<string> = new Set(['hb-3', 'hb-4']);

/** Holds a recorded grade to the recorded movements. The grade is never worked out from them. */
export const r38HouseBrackmann: ConsistencyRule = {
  id: 'R38',
  title: ruleTitles.R38,
  kind: 'consistency',
  version: '1',
  severity: 'check',
  code: 'check-statement',
  source:
    'House JW, Brackmann DE 1985, wording read second-hand; one grade hides regional difference',
  evidence: 'second-hand',
  run: (context) =>
    context.index
      .about('scale-score', 'hb')
      .flatMap((score) =>
        oneSides
          .filter((side) => score.side !== undefined && coversSide(score.side, side))
          .map((side) => gradeFinding(context, score, side)),
      ),
};

function gradeFinding(context: CheckContext, score: ScaleScore, side: OneSide): RuleFinding {
  const allowed = grades.get(String(score.score));
  const movements = Object.values(testsOf)
    .flat()
    .map((test) => movementOn(context, test, side));
  const tested = movements.filter(isTested);
  const missing = movements.flatMap((one) => (isTested(one) ? [] : [one.missing]));
  const base = { on: `${score.key} ${side}`, side };
  if (allowed === undefined || tested.length === 0) {
    return {
      ...base,
      outcome: 'not-evaluable',
      inputsUsed: [score.key],
      inputsMissing: allowed === undefined ? ['a grade that is known'] : missing,
      text: `House-Brackmann grade ${sideText(side)}: no movement of that side to hold it to.`,
    };
  }
  const synkinesis = tested.some((one) => one.synkinesis) && bySynkinesis.has(String(score.score));
  const against = tested.filter((one) => !fits(one, allowed, synkinesis));
  const gap = score.score === 'hb-1' ? gapKeys(context, side) : [];
  const allNormal = everyNormal(tested, missing, score, synkinesis);
  const fires = against.length > 0 || gap.length > 0 || allNormal;
  const keys = (fires && !allNormal ? against : tested).map((one) => one.key);
  return {
    ...base,
    outcome: fires ? 'fires' : 'does-not-fire',
    inputsUsed: [score.key, ...keys, ...gap],
    inputsMissing: missing,
    text: fires
      ? `House-Brackmann grade ${sideText(side)} and the recorded movements do not fit together: check the grade, the movements and the side.`
      : `House-Brackmann grade ${sideText(side)} fits the recorded movements.`,
  };
}

function fits(movement: TestedMovement, allowed: Limits, synkinesis: boolean): boolean {
  const { rank } = movement;
  if (rank === undefined) return true;
  return parts(movement.test).every((part) => {
    const limits = allowed[part];
    if (limits === undefined) return true;
    return (synkinesis || rank >= limits.least) && rank <= limits.most;
  });
}

/** A grade from II on with nothing weak at all, where every movement was tested. */
function everyNormal(
  tested: readonly TestedMovement[],
  missing: readonly string[],
  score: ScaleScore,
  synkinesis: boolean,
): boolean {
  const grade = String(score.score);
  if (grade === 'hb-1' || synkinesis || missing.length > 0) return false;
  return tested.every((one) => one.rank === 0);
}

/** A gap on closing the eyes denies a normal face. */
function gapKeys(context: CheckContext, side: OneSide): readonly string[] {
  const gap = measured(context, 'lagophthalmos', side);
  return isMeasured(gap) && gap.value.digits > 0n ? [gap.statement.key] : [];
}

function parts(test: string): readonly Part[] {
  const all: readonly Part[] = ['forehead', 'closing gently', 'closing tightly', 'mouth'];
  return all.filter((part) => testsOf[part].includes(test));
}

function all(least: number, most: number): { readonly [P in Part]: Allowed } {
  const allowed = span(least, most);
  return {
    forehead: allowed,
    'closing gently': allowed,
    'closing tightly': allowed,
    mouth: allowed,
  };
}

function span(least: number, most: number): Allowed {
  return { least, most };
}
