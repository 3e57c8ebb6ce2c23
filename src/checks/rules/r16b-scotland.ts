import type { CheckContext } from '../context.ts';
import { every, type Fact, ifNotDenied, known, not, some, unknown } from '../facts/fact.ts';
import {
  enlargedNodes,
  hoarseness,
  neckLump,
  thyroidLump,
  withJudgement,
} from '../facts/neck-lumps.ts';
import {
  ageAtLeast,
  background,
  judged,
  sign,
  symptom,
  symptomLasting,
  symptomsNamed,
} from '../facts/stated.ts';
import { promptFinding } from '../prompts/prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';
import { fill } from '../words/check-words.ts';

const AGE = 35;
const CHILD = 16;
const THREE_WEEKS = 21;

/** Head, neck and thyroid criteria of the Scottish guideline that an exam of this kind can answer. */
export const r16bScotland: PromptRule = {
  id: 'R16b',
  title: 'Referral for airway, hoarseness, swallowing, neck lump or thyroid nodule',
  kind: 'prompt',
  ruleSet: 'suspected-cancer-scotland',
  version: '2',
  severity: 'prompt',
  source:
    'rightdecisions.scot.nhs.uk, Scottish Referral Guidelines for Suspected Cancer, head and neck and thyroid cancers',
  evidence: 'read',
  run: (context) => [
    airway(context),
    constantHoarseness(context),
    swallowing(context),
    lump(context),
    thyroid(context),
  ],
};

function airway(context: CheckContext): RuleFinding {
  const stridor = some([
    symptom(context, 'sym-throat.stridor'),
    sign(context, {
      finding: 'stridor',
      regions: ['general', 'neck-midline'],
      by: [],
    }),
  ]);
  return promptFinding(context, stridor, { on: 'airway', urgency: 'now', says: 'airway' });
}

function constantHoarseness(context: CheckContext): RuleFinding {
  const lasting = symptomLasting(context, 'sym-throat.hoarseness', THREE_WEEKS);
  const constant = every([lasting, isConstant(context, lasting)]);
  const fact = every([
    ageAtLeast(context, AGE),
    withJudgement(context, constant, ['unexplained'], 'the-hoarseness'),
  ]);
  return promptFinding(context, fact, {
    on: 'hoarseness',
    urgency: 'weeks',
    says: 'constant-hoarseness',
    values: { years: AGE },
  });
}

/** "Comes and goes" is not constant; otherwise it is for the clinician to say. */
function isConstant(context: CheckContext, lasting: Fact): Fact {
  const { phrases } = context.words;
  if (lasting.holds !== true) return unknown();
  const changing = symptomsNamed(context, lasting.used).find(
    (one) => one.course === 'comes-and-goes',
  );
  if (changing !== undefined) return known(false, changing.key);
  return ifNotDenied(
    judged(
      context,
      lasting.used,
      'persistent',
      fill(phrases['judge-constant'], { name: phrases['the-hoarseness'] }),
    ),
  );
}

function swallowing(context: CheckContext): RuleFinding {
  const lasting = symptomLasting(context, 'sym-throat.odynophagia', THREE_WEEKS);
  const fact = withJudgement(context, lasting, ['unexplained'], 'the-swallowing-pain');
  return promptFinding(context, fact, {
    on: 'swallowing',
    urgency: 'weeks',
    says: 'swallowing-pain',
  });
}

/** The lump may be found; how long it has been there only the patient can tell. */
function lump(context: CheckContext): RuleFinding {
  const there = neckLump(context);
  const told = ['sym-neck.lump', 'sym-neck.swelling'].map((code) =>
    symptomLasting(context, code, THREE_WEEKS),
  );
  const lasting =
    told.find((one) => one.holds === true) ??
    told.find((one) => one.holds === false && symptomsNamed(context, one.used).some(isYes)) ??
    unknown(context.words.phrases['lump-how-long']);
  const fact = there.holds === true ? every([there, lasting]) : there;
  return promptFinding(context, withJudgement(context, fact, ['unexplained'], 'the-lump'), {
    on: 'lump',
    urgency: 'weeks',
    says: 'lasting-lump',
  });
}

function isYes(statement: { readonly answer: string }): boolean {
  return statement.answer === 'yes';
}

function thyroid(context: CheckContext): RuleFinding {
  const feature = some([
    symptom(context, 'sym-thyroid.rapid-growth'),
    withJudgement(context, hoarseness(context), ['unexplained'], 'the-hoarseness'),
    enlargedNodes(context),
    background(context, 'radiotherapy'),
    background(context, 'family-endocrine-tumour'),
    not(ageAtLeast(context, CHILD + 1)),
  ]);
  const nodule = thyroidLump(context);
  return promptFinding(context, nodule.holds === true ? every([nodule, feature]) : nodule, {
    on: 'thyroid',
    urgency: 'weeks',
    says: 'thyroid-nodule',
    values: { years: CHILD },
  });
}
