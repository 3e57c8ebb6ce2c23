import type { CheckContext } from '../context.ts';
import { alsoMissing, every, type Fact, knownBy, some } from '../facts/fact.ts';
import { ageAtLeast, lastedDays, sign, symptom, symptomsNamed } from '../facts/stated.ts';
import { promptFinding } from '../prompts/prompt.ts';
import type { PromptRule, RuleFinding } from '../rule.ts';

const AGE = 50;
/** A headache that has lasted so long without getting worse is not called new. */
const NOT_NEW_DAYS = 365;
const arterySigns = [
  'tender',
  'artery-thickened',
  'artery-nodular',
  'artery-pulse.absent',
  'artery-pulse.reduced',
];
/** What counts where it is told; the exam is not held incomplete for want of it. */
const toldToo = [
  'sym-jaw.pain-on-chewing',
  'sym-jaw.tongue-claudication',
  'sym-general.scalp-tenderness',
  'sym-general.limb-claudication',
];
/** Of the eyes: enough by themselves, and an emergency beside anything else. */
const sightAlone = ['sym-eye.visual-loss', 'sym-eye.double-vision'];
const visual = [...sightAlone, 'sym-eye.blurred-vision'];

/** Temporal artery, scalp, jaw, sight or new headache from 50 years on; the eyes make it an emergency. */
export const r22GiantCell: PromptRule = {
  id: 'R22',
  title: 'Temporal artery, scalp, jaw, sight or headache at 50 years or over',
  kind: 'prompt',
  ruleSet: 'giant-cell-arteritis-uk',
  version: '2',
  severity: 'prompt',
  source:
    'British Society for Rheumatology 2020, Rheumatology 59:e1-e23, executive summary; NHS Lanarkshire, NHS Highland and BNSSG pathways (visual symptoms alone); a headache of a year that is no worse is not new: common practice, no source',
  evidence: 'read',
  run: (context) => [arteritis(context)],
};

function arteritis(context: CheckContext): RuleFinding {
  const features = some([
    ...arterySigns.map((finding) => touched(context, finding, ['temporal-artery'])),
    symptom(context, 'sym-jaw.jaw-claudication'),
    newHeadache(context),
    ...[
      touched(context, 'skin-tender', ['temple', 'scalp-margin']),
      ...[...toldToo, ...sightAlone].map((code) => symptom(context, code)),
    ].filter((one) => one.holds === true),
  ]);
  const sight = some(visual.map((code) => symptom(context, code)));
  const suspected = every([ageAtLeast(context, AGE), features]);
  const fact = suspected.holds === true ? alsoMissing(suspected, sight) : suspected;
  const emergency = suspected.holds === true && sight.holds === true;
  return promptFinding(
    context,
    emergency ? { ...fact, used: [...new Set([...fact.used, ...sight.used])] } : fact,
    {
      urgency: emergency ? 'now' : 'same-day',
      says: emergency ? 'arteritis-eyes' : 'arteritis',
      values: { years: AGE },
    },
  );
}

function touched(context: CheckContext, finding: string, regions: readonly string[]): Fact {
  return sign(context, { finding, regions, by: ['palpation'] });
}

function newHeadache(context: CheckContext): Fact {
  const headache = symptom(context, 'sym-general.headache');
  if (headache.holds !== true) return headache;
  const old = symptomsNamed(context, headache.used).filter(
    (one) => one.course !== 'worse' && lastedDays(context, one, NOT_NEW_DAYS).holds === true,
  );
  return old.length === headache.used.length ? knownBy(false, headache.used) : headache;
}
