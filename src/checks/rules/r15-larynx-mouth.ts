import type { CheckContext } from '../context.ts';
import { every, type Fact, not, some } from '../facts/fact.ts';
import { hoarseness, neckLump, withJudgement } from '../facts/neck-lumps.ts';
import { ageAtLeast, sign } from '../facts/stated.ts';
import { promptFinding } from '../prompts/prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';

const AGE = 45;
const ADULT = 18;
const lips = ['lip-upper', 'lip-lower', 'vermilion', 'commissure'];
const lumps = ['nodule', 'subcutaneous-nodule', 'lump-felt'];

/** Hoarseness and neck lump from 45 years on, neck lump at any age, lump of the lip. */
export const r15LarynxMouth: PromptRule = {
  id: 'R15',
  title: 'Referral for hoarseness, neck lump or lump of the lip',
  kind: 'prompt',
  ruleSet: 'ng12-england',
  version: '2',
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
    'the-hoarseness',
  );
  const lump = withJudgement(context, neckLump(context), ['unexplained'], 'the-neck-lump');
  return promptFinding(context, every([ageAtLeast(context, AGE), some([hoarse, lump])]), {
    on: 'larynx',
    urgency: 'weeks',
    says: 'larynx',
    values: { years: AGE },
  });
}

/**
 * Ulcers and patches of the mouth are not part of this exam. Of a child the guideline speaks of
 * lymphoma and not of the mouth; an age that is not known is not a reason for silence.
 */
function mouth(context: CheckContext): RuleFinding {
  const lump = withJudgement(
    context,
    neckLump(context),
    ['persistent', 'unexplained'],
    'the-neck-lump',
  );
  const adult = ageAtLeast(context, ADULT);
  return promptFinding(context, adult.holds === false ? every([adult, lump]) : lump, {
    on: 'mouth',
    urgency: 'weeks',
    says: 'mouth',
  });
}

/** A cold sore is a lesion of the lip and no lump. */
function lip(context: CheckContext): RuleFinding {
  const by = ['inspection', 'inspection-magnified', 'palpation'];
  const at = (finding: string): Fact => sign(context, { finding, regions: lips, by });
  const lesion = at('lip-lesion');
  const coldSore = at('herpes-labialis');
  const lump = some([
    ...lumps.map(at).filter((fact) => fact.holds === true),
    lesion.holds === true && coldSore.holds === true ? not(coldSore) : lesion,
  ]);
  return promptFinding(context, lump, { on: 'lip', urgency: 'weeks', says: 'lip' });
}
