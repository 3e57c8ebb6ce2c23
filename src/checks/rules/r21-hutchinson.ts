import type { CheckContext } from '../context.ts';
import { every, type Fact, some } from '../facts/fact.ts';
import { sign } from '../facts/stated.ts';
import { type OneSide, oneSides } from '../places/sides.ts';
import { promptFinding } from '../prompts/prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';

const rashes = ['vesicles', 'rash', 'herpes-zoster'];
/** Supplied by the nasociliary nerve, as is the eye. */
const nasociliary = ['nose-tip', 'nose-sidewall'];
/** Skin of the first division apart from the nose. */
const firstDivision = ['forehead', 'scalp-margin', 'eyebrow', 'glabella', 'lid-upper', 'nose-root'];
const looked = ['inspection', 'inspection-magnified'];

/** Rash of the first division with the tip or side of the nose. */
export const r21Hutchinson: PromptRule = {
  id: 'R21',
  title: 'Rash of the forehead with the tip or side of the nose',
  kind: 'prompt',
  ruleSet: 'zoster-eye-uk',
  version: '1',
  severity: 'urgent',
  source:
    'BMJ 2019;364:k5095 and k5234; College of Optometrists clinical management guideline (copy)',
  evidence: 'second-hand',
  run: (context) => oneSides.map((side) => sideFinding(context, side)),
};

function sideFinding(context: CheckContext, side: OneSide): RuleFinding {
  const fact = every([rashOn(context, side, nasociliary), rashOn(context, side, firstDivision)]);
  return promptFinding(context, fact, { on: side, side, urgency: 'same-day', says: 'nose-zoster' });
}

/** A rash of any of the kinds at any of the places; no only where each place was looked at. */
function rashOn(context: CheckContext, side: OneSide, regions: readonly string[]): Fact {
  return some(rashes.map((finding) => sign(context, { finding, regions, side, by: looked })));
}
