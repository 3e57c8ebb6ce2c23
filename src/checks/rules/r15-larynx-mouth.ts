import type { CheckContext } from '../context.ts';
import { every, some } from '../facts/fact.ts';
import { hoarseness, neckLump, withJudgement } from '../facts/neck-lumps.ts';
import { ageAtLeast, sign } from '../facts/stated.ts';
import { promptFinding } from '../prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';

const set = 'ng12-england';
const AGE = 45;

/** Hoarseness and neck lump from 45 years on, neck lump at any age, lump of the lip. */
export const r15LarynxMouth: PromptRule = {
  id: 'R15',
  title: 'Referral for hoarseness, neck lump or lump of the lip',
  kind: 'prompt',
  ruleSet: set,
  version: '1',
  severity: 'prompt',
  source: 'NICE NG12, head and neck cancers, read in copies (CKS, statmed.org, Macmillan)',
  evidence: 'second-hand',
  run: (context) => [larynx(context), mouth(context), lip(context)],
};

function larynx(context: CheckContext): RuleFinding {
  const hoarse = withJudgement(
    context,
    hoarseness(context),
    ['persistent', 'unexplained'],
    'the hoarseness',
  );
  const lump = withJudgement(context, neckLump(context), ['unexplained'], 'the neck lump');
  return promptFinding(set, every([ageAtLeast(context, AGE), some([hoarse, lump])]), {
    on: 'larynx',
    advice: `Consider a suspected cancer pathway referral for laryngeal cancer at ${AGE} years or over where hoarseness is persistent and unexplained or a lump in the neck is unexplained.`,
    criterion: `Hoarseness or neck lump at ${AGE} years or over`,
  });
}

/** Ulcers and patches of the mouth are no part of this exam. */
function mouth(context: CheckContext): RuleFinding {
  const lump = withJudgement(
    context,
    neckLump(context),
    ['persistent', 'unexplained'],
    'the neck lump',
  );
  return promptFinding(set, lump, {
    on: 'mouth',
    advice:
      'Consider a suspected cancer pathway referral for oral cancer where a lump in the neck is persistent and unexplained. The mucosa of mouth and throat is not part of this exam.',
    criterion: 'Persistent, unexplained neck lump',
  });
}

function lip(context: CheckContext): RuleFinding {
  const lesion = sign(context, {
    finding: 'lip-lesion',
    regions: ['lip-upper', 'lip-lower', 'vermilion', 'commissure'],
    by: ['inspection', 'inspection-magnified', 'palpation'],
  });
  return promptFinding(set, lesion, {
    on: 'lip',
    advice:
      'Consider an urgent referral for assessment by a dentist where there is a lump on the lip.',
    criterion: 'Lump on the lip',
  });
}
