import type { CheckContext } from '../context.ts';
import { facialPattern, facialWeaknessStated } from '../facts/facial-pattern.ts';
import { alsoMissing, type Fact, known, unknown } from '../facts/fact.ts';
import { symptom, symptomsNamed } from '../facts/stated.ts';
import { type OneSide, oneSides } from '../places/sides.ts';
import { promptFinding } from '../prompts/prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';

/** Weak lower face with the forehead spared: the wording of a stroke pathway. */
export const r19aForeheadSpared: PromptRule = {
  id: 'R19a',
  title: 'Weak lower face with the forehead spared',
  kind: 'prompt',
  ruleSet: 'facial-weakness-signs',
  version: '2',
  severity: 'urgent',
  source:
    'GPnotebook and University of Aberdeen teaching pages on facial nerve palsy; Wongwandee M 2025, Neurol Int 17:12 (tight closing of the eyes is weak in many central palsies)',
  evidence: 'second-hand',
  run: (context) =>
    facialWeaknessStated(context) ? oneSides.map((side) => sideFinding(context, side)) : [],
};

/** Whether the eye closes does not matter: it is weak in many central palsies too. */
function sideFinding(context: CheckContext, side: OneSide): RuleFinding {
  const { pattern, used, missing } = facialPattern(context, side);
  const fact: Fact = {
    holds: pattern === undefined ? undefined : pattern === 'forehead spared' || pattern === 'mixed',
    used: pattern === undefined ? [...used, ...weaknessKeys(context)] : used,
    missing,
  };
  return promptFinding(context, fact.holds === true ? alsoMissing(fact, onset(context)) : fact, {
    on: side,
    side,
    urgency: 'now',
    says: 'forehead-spared',
  });
}

/** Statements that the face is weak, by which the question arises. */
function weaknessKeys({ index }: CheckContext): readonly string[] {
  const seen = index
    .about('finding', 'facial-weakness')
    .filter((one) => one.presence === 'present');
  const told = index.about('symptom', 'sym-motor.weakness').filter((one) => one.answer === 'yes');
  return [...seen, ...told].map(({ key }) => key);
}

function onset(context: CheckContext): Fact {
  const told = symptomsNamed(context, symptom(context, 'sym-motor.weakness').used);
  const timed = told.find((one) => one.onset !== undefined || one.duration !== undefined);
  return timed === undefined ? unknown(context.words.phrases.onset) : known(true, timed.key);
}
