import type { CheckContext } from '../context.ts';
import { facialMovementStated, facialPattern } from '../facts/facial-pattern.ts';
import { alsoMissing, type Fact, known, unknown } from '../facts/fact.ts';
import { symptom, symptomsNamed } from '../facts/stated.ts';
import { type OneSide, oneSides } from '../places/sides.ts';
import { promptFinding } from '../prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';

const set = 'facial-weakness-signs';

/** Weak lower face with the forehead spared: the wording of a stroke pathway. */
export const r19aForeheadSpared: PromptRule = {
  id: 'R19a',
  title: 'Weak lower face with the forehead spared',
  kind: 'prompt',
  ruleSet: set,
  version: '1',
  severity: 'urgent',
  source: 'GPnotebook and University of Aberdeen teaching pages on facial nerve palsy',
  evidence: 'second-hand',
  run: (context) =>
    facialMovementStated(context) ? oneSides.map((side) => sideFinding(context, side)) : [],
};

function sideFinding(context: CheckContext, side: OneSide): RuleFinding {
  const { pattern, used, missing } = facialPattern(context, side);
  const fact: Fact = {
    holds: pattern === undefined ? undefined : pattern === 'forehead spared',
    used,
    missing,
  };
  return promptFinding(set, fact.holds === true ? alsoMissing(fact, onset(context)) : fact, {
    on: side,
    side,
    advice: `Consider the local stroke pathway without delay: the lower face is weak on the ${side} and the forehead is spared. State when it began; an unknown onset is no reason to wait.`,
    criterion: `Weak lower face with the forehead spared on the ${side}`,
  });
}

function onset(context: CheckContext): Fact {
  const told = symptomsNamed(context, symptom(context, 'sym-motor.weakness').used);
  const timed = told.find((one) => one.onset !== undefined || one.duration !== undefined);
  return timed === undefined ? unknown('when the weakness began') : known(true, timed.key);
}
