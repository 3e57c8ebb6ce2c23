import { thyroidLump, withJudgement } from '../facts/neck-lumps.ts';
import { promptFinding } from '../prompts/prompt.ts';
import type { PromptRule } from '../rule.ts';

/** An unexplained lump of the thyroid, at any age and without a further feature. */
export const r16Thyroid: PromptRule = {
  id: 'R16',
  title: 'Referral of a thyroid lump',
  kind: 'prompt',
  ruleSet: 'ng12-england',
  version: '1',
  severity: 'prompt',
  source: 'NICE NG12, thyroid cancer, read in copies (GPnotebook, Macmillan)',
  evidence: 'second-hand',
  run: (context) => {
    const lump = withJudgement(context, thyroidLump(context), ['unexplained'], 'the-thyroid-lump');
    return [promptFinding(context, lump, { urgency: 'weeks', says: 'thyroid-lump' })];
  },
};
