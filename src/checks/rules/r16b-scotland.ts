import type { CheckContext } from '../context.ts';
import {
  alsoMissing,
  every,
  type Fact,
  ifNotDenied,
  known,
  not,
  some,
  unknown,
} from '../facts/fact.ts';
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
import { promptFinding } from '../prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';

const set = 'suspected-cancer-scotland';
const AGE = 35;
const CHILD = 16;
const THREE_WEEKS = 21;
const usc = 'Refer to the head and neck service with urgent suspicion of cancer';

/** Head, neck and thyroid criteria of the Scottish guideline that an exam of this kind can answer. */
export const r16bScotland: PromptRule = {
  id: 'R16b',
  title: 'Referral for airway, hoarseness, swallowing, neck lump or thyroid nodule',
  kind: 'prompt',
  ruleSet: set,
  version: '1',
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
  return promptFinding(set, stridor, {
    on: 'airway',
    advice: 'Refer as an emergency on the same day: stridor, the upper airway may be compromised.',
    criterion: 'Stridor',
    severity: 'urgent',
  });
}

function constantHoarseness(context: CheckContext): RuleFinding {
  const lasting = symptomLasting(context, 'sym-throat.hoarseness', THREE_WEEKS);
  const constant = every([lasting, isConstant(context, lasting)]);
  const fact = every([
    ageAtLeast(context, AGE),
    withJudgement(context, constant, ['unexplained'], 'the hoarseness'),
  ]);
  return promptFinding(set, fact, {
    on: 'hoarseness',
    advice: `${usc}: constant hoarseness for three weeks or more at ${AGE} years or over, where it is unexplained.`,
    criterion: `Constant hoarseness for three weeks or more at ${AGE} years or over`,
  });
}

/** "Comes and goes" is not constant; otherwise it is for the clinician to say. */
function isConstant(context: CheckContext, lasting: Fact): Fact {
  if (lasting.holds !== true) return unknown();
  const changing = symptomsNamed(context, lasting.used).find(
    (one) => one.course === 'comes-and-goes',
  );
  if (changing !== undefined) return known(false, changing.key);
  return ifNotDenied(
    judged(context, lasting.used, 'persistent', 'whether the hoarseness is constant'),
  );
}

function swallowing(context: CheckContext): RuleFinding {
  const lasting = symptomLasting(context, 'sym-throat.odynophagia', THREE_WEEKS);
  const fact = withJudgement(context, lasting, ['unexplained'], 'the pain on swallowing');
  return promptFinding(set, fact, {
    on: 'swallowing',
    advice: `${usc}: pain on swallowing for three weeks or more, where it is unexplained.`,
    criterion: 'Pain on swallowing for three weeks or more',
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
    unknown('how long the lump has been there');
  const fact = there.holds === true ? every([there, lasting]) : there;
  return promptFinding(set, withJudgement(context, fact, ['unexplained'], 'the lump'), {
    on: 'lump',
    advice: `${usc}: neck or parotid lump for three weeks or more, where it is unexplained.`,
    criterion: 'Neck or parotid lump for three weeks or more',
  });
}

function isYes(statement: { readonly answer: string }): boolean {
  return statement.answer === 'yes';
}

function thyroid(context: CheckContext): RuleFinding {
  const feature = some([
    symptom(context, 'sym-thyroid.rapid-growth'),
    withJudgement(context, hoarseness(context), ['unexplained'], 'the hoarseness'),
    enlargedNodes(context),
    background(context, 'radiotherapy'),
    not(ageAtLeast(context, CHILD + 1)),
  ]);
  const nodule = thyroidLump(context);
  const both = every([nodule, feature]);
  const family = unknown('family history of endocrine tumours (this exam has no question for it)');
  // Without the family history no combination of the others is a clear no.
  const fact =
    nodule.holds === true && both.holds === false
      ? { ...alsoMissing(both, family), holds: undefined }
      : both;
  return promptFinding(set, fact, {
    on: 'thyroid',
    advice: `${usc}: thyroid nodule with fast growth, unexplained hoarseness, enlarged nodes, earlier irradiation of the neck, or an age of ${CHILD} or under.`,
    criterion: 'Thyroid nodule with a further feature',
  });
}
